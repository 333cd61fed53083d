#pragma once
// The options of a command, declared without the library that reads them: with it a command took 12
// seconds to compile, without it 5, so options.cpp and main.cpp alone know it.

#include "platform/cli/failure.h"

#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace CLI {
class App;
class Option;
} // namespace CLI

namespace wrapwright::cli {

/// What is run after the command line has been read.
using Job = std::function<ExitCode()>;

/// An option as it was declared; what is asked of it stands in the command's help, too.
class Option {
  public:
    explicit Option(CLI::Option& option) : option_(&option) {}

    const Option& required() const;
    const Option& one_of(const std::vector<std::string>& words) const;
    const Option& within(int least, int most) const;
    const Option& within(double least, double most) const;
    /// It has to be named again for each further value.
    const Option& one_at_a_time() const;
    /// One text may hold several values, with commas between them.
    const Option& by_commas() const;
    const Option& never_with(const Option& other) const;

  private:
    CLI::Option* option_;
};

/// The program, or a command of it.
class Command {
  public:
    explicit Command(CLI::App& app) : app_(&app) {}

    [[nodiscard]] Command command(const std::string& name, const std::string& help) const;

    /// Each of these writes into `value`, which has to outlive the reading, when the option is there.
    Option option(const std::string& names, std::string& value, const std::string& help) const;
    Option option(const std::string& names, std::vector<std::string>& value,
                  const std::string& help) const;
    Option option(const std::string& names, int& value, const std::string& help) const;
    Option option(const std::string& names, std::int64_t& value, const std::string& help) const;
    Option option(const std::string& names, double& value, const std::string& help) const;
    Option flag(const std::string& names, bool& value, const std::string& help) const;

    /// Where the command is the one that was asked for, `job` becomes to run it with its options.
    template <class T>
    void runs(Job& job, const std::shared_ptr<T>& options, ExitCode (*run)(const T&)) const {
        asked_for([&job, options, run] { job = [options, run] { return run(*options); }; });
    }

  private:
    void asked_for(std::function<void()> then) const;

    CLI::App* app_;
};

} // namespace wrapwright::cli
