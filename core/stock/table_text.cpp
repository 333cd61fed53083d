#include "core/stock/table_text.h"

#include "core/stock/stock_item.h"

#include <algorithm>

namespace wrapwright {

namespace {

char separator_of(std::string_view text) {
    int commas = 0, semicolons = 0, tabs = 0;
    bool quoted = false;
    for (const char c : text) {
        if (c == '"') quoted = !quoted;
        if (quoted) continue;
        if (c == '\n' || c == '\r') break;
        commas += c == ',' ? 1 : 0;
        semicolons += c == ';' ? 1 : 0;
        tabs += c == '\t' ? 1 : 0;
    }
    if (tabs > commas && tabs >= semicolons) return '\t';
    return semicolons > commas ? ';' : ',';
}

/// The reading of a table at work.
class Reader {
  public:
    Reader(std::string_view text, char separator) : text_(text) { out_.separator = separator; }

    Result<TableText> read() {
        while (at_ < text_.size()) {
            const char c = text_[at_++];
            if (quoted_) {
                in_quotes(c);
            } else if (c == '"' && cell_.empty()) {
                quoted_ = was_quoted_ = true;
                quote_line_ = line_;
            } else if (c == out_.separator) {
                end_cell();
            } else if (c == '\n' || c == '\r') {
                if (c == '\r' && at_ < text_.size() && text_[at_] == '\n') ++at_;
                end_row();
                ++line_;
                row_line_ = line_;
            } else {
                cell_.push_back(c);
            }
            if (out_.rows.size() > most_table_rows) {
                return Error{ErrorCode::too_large,
                             "the table has over 200,000 rows",
                             "cut it into several files",
                             {line_, {}}};
            }
        }
        if (quoted_) {
            return Error{ErrorCode::malformed,
                         "a quote begins here and does not end",
                         "close it, or double a quote that belongs to the text",
                         {quote_line_, {}}};
        }
        end_row();
        return std::move(out_);
    }

  private:
    void in_quotes(char c) {
        if (c == '\n') ++line_;
        if (c != '"') {
            cell_.push_back(c);
        } else if (at_ < text_.size() && text_[at_] == '"') {
            cell_.push_back('"');
            ++at_;
        } else {
            quoted_ = false;
        }
    }
    void end_cell() {
        cells_.push_back(std::move(cell_));
        cell_.clear();
        was_quoted_ = false;
    }
    void end_row() {
        const bool empty = cells_.empty() && cell_.empty() && !was_quoted_;
        end_cell();
        if (!empty) {
            out_.rows.push_back(std::move(cells_));
            out_.lines.push_back(row_line_);
        }
        cells_.clear();
    }

    std::string_view text_;
    std::size_t at_ = 0;
    TableText out_{};
    std::vector<std::string> cells_{};
    std::string cell_{};
    bool quoted_ = false, was_quoted_ = false;
    int line_ = 1, row_line_ = 1, quote_line_ = 1;
};

} // namespace

Result<TableText> read_table(std::string_view text) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    return Reader(text, separator_of(text)).read();
}

std::string write_table(const std::vector<std::vector<std::string>>& rows) {
    std::string out;
    for (const std::vector<std::string>& row : rows) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (i > 0) out.push_back(',');
            const std::string& cell = row[i];
            const bool alone = row.size() == 1 && cell.empty(); // else the row would be no line
            if (!alone && cell.find_first_of(",;\t\"\r\n") == std::string::npos &&
                !cell.starts_with("\xEF\xBB\xBF")) {
                out.append(cell);
                continue;
            }
            out.push_back('"');
            for (const char c : cell) out.append(c == '"' ? 2 : 1, c);
            out.push_back('"');
        }
        out.append("\r\n");
    }
    return out;
}

Result<std::vector<int>> detail::columns_of(const std::vector<std::string>& heading,
                                            const std::vector<std::string_view>& keys,
                                            std::string_view least_key) {
    std::vector<int> out;
    out.reserve(heading.size());
    for (const std::string& said : heading) {
        const auto at = std::find(keys.begin(), keys.end(), plain_name(said));
        const int field = at == keys.end() ? -1 : static_cast<int>(at - keys.begin());
        if (field >= 0 && std::find(out.begin(), out.end(), field) != out.end()) {
            std::string message("two columns are called ");
            message.append(said);
            return Error{ErrorCode::duplicate, std::move(message), "keep one of them", {1, said}};
        }
        out.push_back(field);
    }
    const auto least = std::find(keys.begin(), keys.end(), least_key);
    if (std::find(out.begin(), out.end(), static_cast<int>(least - keys.begin())) == out.end()) {
        std::string message("no column is called ");
        message.append(least_key);
        return Error{ErrorCode::malformed,
                     std::move(message),
                     "the first line names the columns; this one has to be among them",
                     {1, {}}};
    }
    return out;
}

} // namespace wrapwright
