#include "gui/book_settings.h"

#include "core/units/number_text.h"

#include <algorithm>

namespace wrapwright {

namespace {

struct NumberRow {
    std::string_view key;
    double BookSettings::* member;
    double least, most;
};
constexpr NumberRow numbers[] = {
    {"spoilt share", &BookSettings::spoil, 0.0, 0.5},
    {"sure share", &BookSettings::sure, 0.0, 0.999},
    {"waste share", &BookSettings::waste, 0.0, 0.9},
    {"learning rate", &BookSettings::learning, 0.5, 1.0},
    {"fee share", &BookSettings::fee, 0.0, 0.45},
    {"tax share", &BookSettings::tax, 0.0, 0.45},
};

struct MoneyRow {
    std::string_view key;
    Money BookSettings::* member;
};
constexpr MoneyRow moneys[] = {
    {"an hour's worth", &BookSettings::hourly},
    {"packing", &BookSettings::packing},
    {"postage", &BookSettings::postage},
};

constexpr std::string_view minutes_key = "minutes a day", curve_key = "learning curve",
                           currency_key = "currency", roster_key = "swap roster",
                           paper_key = "paper", maker_key = "tied by";

/// Seven numbers, Monday first; one stands for all.
bool take_minutes(std::array<double, 7>& out, std::string_view text) {
    std::array<double, 7> read{};
    std::size_t count = 0;
    while (!text.empty()) {
        if (text.front() == ' ') {
            text.remove_prefix(1);
            continue;
        }
        const std::size_t end = std::min(text.find(' '), text.size());
        const Result<double> number = read_number(text.substr(0, end));
        if (!number.ok() || count == read.size()) return false;
        if (!(number.value() >= 0.0 && number.value() <= 1440.0)) return false;
        read[count++] = number.value();
        text.remove_prefix(end);
    }
    if (count == 1) read.fill(read[0]);
    if (count != 1 && count != read.size()) return false;
    out = read;
    return true;
}

} // namespace

std::string text_of(const std::vector<Sender>& roster) {
    std::string out;
    for (const Sender& of : roster) {
        out.append(out.empty() ? "" : ";").append(of.sent ? "+" : "");
        for (const char c : of.name) out.push_back(c == ';' ? ',' : c);
    }
    return out;
}

std::vector<Sender> roster_of(std::string_view text) {
    std::vector<Sender> out;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(';'), text.size());
        std::string_view name = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        while (name.starts_with(' ')) name.remove_prefix(1);
        const bool sent = name.starts_with('+');
        while (name.starts_with('+') || name.starts_with(' ')) name.remove_prefix(1);
        while (name.ends_with(' ')) name.remove_suffix(1);
        const bool twice = std::any_of(out.begin(), out.end(), [&](const Sender& of) {
            return plain_name(of.name) == plain_name(name);
        });
        if (!name.empty() && !twice) out.push_back({std::string(name), sent});
    }
    return out;
}

WorkTerms terms_of(const BookSettings& s, Day today) {
    WorkTerms out;
    out.need = {s.spoil, s.sure, s.waste};
    out.today = today;
    for (std::size_t i = 0; i < s.minutes.size(); ++i) out.room[i] = minutes(s.minutes[i]);
    out.model = s.wright ? LearningModel::wright : LearningModel::crawford;
    out.rate = s.learning;
    out.hourly = s.hourly;
    out.packing = s.packing;
    out.postage = s.postage;
    out.fee = s.fee;
    out.tax = s.tax;
    return out;
}

void add_texts(const BookSettings& s, std::vector<std::pair<std::string, std::string>>& out) {
    for (const NumberRow& row : numbers) out.emplace_back(row.key, write_number(s.*row.member));
    for (const MoneyRow& row : moneys) out.emplace_back(row.key, write_money(s.*row.member));
    std::string days;
    for (const double m : s.minutes) {
        days.append(days.empty() ? "" : " ").append(write_number(m));
    }
    out.emplace_back(minutes_key, std::move(days));
    out.emplace_back(curve_key, s.wright ? "Wright" : "Crawford");
    out.emplace_back(currency_key, s.currency);
    out.emplace_back(roster_key, text_of(s.roster));
    out.emplace_back(paper_key, s.letter ? "letter" : "A4");
    out.emplace_back(maker_key, s.maker);
}

bool take_setting(BookSettings& s, std::string_view key, std::string_view text) {
    for (const NumberRow& row : numbers) {
        if (key != row.key) continue;
        const Result<double> read = read_number(text);
        if (!read.ok() || !(read.value() >= row.least && read.value() <= row.most)) return false;
        s.*row.member = read.value();
        return true;
    }
    for (const MoneyRow& row : moneys) {
        if (key != row.key) continue;
        const Result<Money> read = read_money(text);
        if (!read.ok() || read.value().minor < 0) return false;
        s.*row.member = read.value();
        return true;
    }
    if (key == minutes_key) return take_minutes(s.minutes, text);
    if (key == curve_key) {
        if (text != "Wright" && text != "Crawford") return false;
        s.wright = text == "Wright";
        return true;
    }
    if (key == roster_key) {
        s.roster = roster_of(text);
        return true;
    }
    if (key == paper_key) {
        if (text != "letter" && text != "A4") return false;
        s.letter = text == "letter";
        return true;
    }
    if (key == maker_key) {
        if (text.size() > 60) return false;
        s.maker = text;
        return true;
    }
    if (key != currency_key || text.size() > 20) return false;
    s.currency = text;
    return true;
}

} // namespace wrapwright
