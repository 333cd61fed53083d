// GNU units as an independent judge of every conversion. The program has to be installed.

#include "core/units/number_text.h"
#include "core/units/size_text.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

#include <cstdio>
#include <fstream>
#include <locale>
#include <random>
#include <sstream>
#include <string>
#include <vector>

using namespace wrapwright;
using wrapwright::test::within_share;

namespace {

/// What GNU units is asked, and what it should answer.
struct Question {
    std::string have, want;
    double ours;
};

/// The program's answers, one for each question, in order.
std::vector<double> ask_gnu_units(const std::vector<Question>& questions) {
    const std::string path = std::string(WW_BINARY_DIR) + "/gnu_units_questions.txt";
    {
        std::ofstream file(path);
        for (const Question& q : questions) file << q.have << '\n' << q.want << '\n';
        REQUIRE(file.good());
    }
    const std::string command = "LC_ALL=C units -q -t -o '%.17g' < '" + path + "'";
    std::FILE* pipe = popen(command.c_str(), "r");
    REQUIRE(pipe != nullptr);
    std::vector<double> answers;
    char line[256];
    while (std::fgets(line, sizeof line, pipe) != nullptr) {
        std::istringstream words(line);
        words.imbue(std::locale::classic()); // whatever the locale of the run is
        double answer = 0.0;
        std::string rest;
        const bool alone = words >> answer && !(words >> rest);
        INFO("GNU units answered: ", std::string(line));
        REQUIRE(alone);
        answers.push_back(answer);
    }
    const int status = pclose(pipe);
    REQUIRE_MESSAGE(status == 0, "GNU units did not run: install the package `units` "
                                 "(apt-get install units), then run the tests again");
    REQUIRE(answers.size() == questions.size());
    return answers;
}

struct LengthName {
    LengthUnit unit;
    const char* gnu;
};
constexpr LengthName lengths[] = {
    {LengthUnit::millimetre, "mm"}, {LengthUnit::centimetre, "cm"}, {LengthUnit::metre, "m"},
    {LengthUnit::inch, "inch"},     {LengthUnit::thou, "mil"},      {LengthUnit::foot, "foot"},
    {LengthUnit::yard, "yard"},
};
struct MassName {
    MassUnit unit;
    const char* gnu;
};
constexpr MassName masses[] = {
    {MassUnit::milligram, "mg"}, {MassUnit::gram, "gram"},   {MassUnit::grain, "grain"},
    {MassUnit::ounce, "ounce"},  {MassUnit::pound, "pound"},
};
struct LinearName {
    LinearDensityUnit unit;
    const char* gnu;
};
constexpr LinearName linears[] = {
    {LinearDensityUnit::tex, "tex"},
    {LinearDensityUnit::decitex, "decitex"},
    {LinearDensityUnit::denier, "denier"},
};

/// Every unit into every other, 20 random numbers each.
template <class Name, std::size_t n>
void ask_all(std::vector<Question>& questions, const Name (&names)[n], std::mt19937_64& random) {
    for (const Name& from : names) {
        for (const Name& to : names) {
            for (int i = 0; i < 20; ++i) {
                const double number = static_cast<double>(random() >> 11) * 0x1p-53 * 100.0;
                questions.push_back({write_number(number) + ' ' + from.gnu, to.gnu,
                                     convert(number, from.unit, to.unit)});
            }
        }
    }
}

void check(const std::vector<Question>& questions, double share) {
    const std::vector<double> answers = ask_gnu_units(questions);
    for (std::size_t i = 0; i < questions.size(); ++i) {
        CAPTURE(questions[i].have);
        CAPTURE(questions[i].want);
        CHECK(within_share(questions[i].ours, answers[i], share));
    }
}

} // namespace

TEST_CASE("GNU units agrees on every conversion of length, mass and thread weight") {
    // Tolerance  two roundings of ours and up to eight of theirs, 2^-53 each
    std::mt19937_64 random(258);
    std::vector<Question> questions;
    ask_all(questions, lengths, random);
    ask_all(questions, masses, random);
    ask_all(questions, linears, random);
    check(questions, 1.2e-15);
}

TEST_CASE("GNU units agrees on the quantities of texts as people write them") {
    // Tolerance  as above, and the division of the fraction
    struct Text {
        const char* ours;
        const char* gnu;
    };
    std::vector<Question> questions;
    for (const Text& t : {Text{"7/64 in", "7|64 inch"}, Text{"1 1/2 in", "(1 + 1|2) inch"},
                          Text{".015\"", ".015 inch"}, Text{"15 thou", "15 mil"},
                          Text{"100 yd", "100 yard"}, Text{"AWG 34", "wiregauge(34)"}}) {
        questions.push_back({t.gnu, "m", parse_length(t.ours).value().quantity.si});
    }
    for (const Text& t : {Text{"3.9 gr", "3.9 grain"}, Text{"1/80 oz", "1|80 ounce"}}) {
        questions.push_back({t.gnu, "kg", parse_mass(t.ours).value().quantity.si});
    }
    for (const Text& t : {Text{"70 den", "70 denier"}, Text{"78 dtex", "78 decitex"}}) {
        questions.push_back({t.gnu, "kg/m", parse_linear_density(t.ours).value().quantity.si});
    }
    check(questions, 2e-15);
}

TEST_CASE("GNU units agrees on the wire gauge and its inverse") {
    // Source     its wiregauge(), which is the American gauge
    // Tolerance  a power and a logarithm on each side, some units in the last place; the inverse
    //            loses near gauge 0, where the number is the small difference of two of about 36
    std::vector<Question> diameters, gauges;
    for (int n = 0; n <= 56; ++n) {
        const std::string gauge = "wiregauge(" + std::to_string(n) + ')';
        diameters.push_back({gauge, "mm", convert(n, LengthUnit::awg, LengthUnit::millimetre)});
        if (n < 10) continue;
        const double mm = 9.0 / n;
        gauges.push_back({write_number(mm) + " mm", "wiregauge",
                          convert(mm, LengthUnit::millimetre, LengthUnit::awg)});
    }
    check(diameters, 5e-15);
    check(gauges, 1e-13);
}
