#include "platform/cli/options.h"

#include <CLI/CLI.hpp>

namespace wrapwright::cli {

const Option& Option::required() const {
    option_->required();
    return *this;
}

const Option& Option::one_of(const std::vector<std::string>& words) const {
    option_->check(CLI::IsMember(words));
    return *this;
}

const Option& Option::within(int least, int most) const {
    option_->check(CLI::Range(least, most));
    return *this;
}

const Option& Option::within(double least, double most) const {
    option_->check(CLI::Range(least, most));
    return *this;
}

const Option& Option::one_at_a_time() const {
    option_->allow_extra_args(false);
    return *this;
}

const Option& Option::by_commas() const {
    option_->delimiter(',');
    return *this;
}

const Option& Option::never_with(const Option& other) const {
    option_->excludes(other.option_);
    return *this;
}

Command Command::command(const std::string& name, const std::string& help) const {
    return Command(*app_->add_subcommand(name, help));
}

Option Command::option(const std::string& names, std::string& value,
                       const std::string& help) const {
    return Option(*app_->add_option(names, value, help));
}

Option Command::option(const std::string& names, std::vector<std::string>& value,
                       const std::string& help) const {
    return Option(*app_->add_option(names, value, help));
}

Option Command::option(const std::string& names, int& value, const std::string& help) const {
    return Option(*app_->add_option(names, value, help));
}

Option Command::option(const std::string& names, std::int64_t& value,
                       const std::string& help) const {
    return Option(*app_->add_option(names, value, help));
}

Option Command::option(const std::string& names, double& value, const std::string& help) const {
    return Option(*app_->add_option(names, value, help));
}

Option Command::flag(const std::string& names, bool& value, const std::string& help) const {
    return Option(*app_->add_flag(names, value, help));
}

void Command::asked_for(std::function<void()> then) const { app_->callback(std::move(then)); }

} // namespace wrapwright::cli
