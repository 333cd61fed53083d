#include "platform/web/keys.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

struct Row {
    std::string_view word;
    ImGuiKey key;
};

constexpr std::array<Row, 26> rows{{
    {" ", ImGuiKey_Space},
    {"Enter", ImGuiKey_Enter},
    {"ArrowLeft", ImGuiKey_LeftArrow},
    {"ArrowRight", ImGuiKey_RightArrow},
    {"ArrowUp", ImGuiKey_UpArrow},
    {"ArrowDown", ImGuiKey_DownArrow},
    {"PageUp", ImGuiKey_PageUp},
    {"PageDown", ImGuiKey_PageDown},
    {"Home", ImGuiKey_Home},
    {"End", ImGuiKey_End},
    {"Backspace", ImGuiKey_Backspace},
    {"Delete", ImGuiKey_Delete},
    {"Insert", ImGuiKey_Insert},
    {"Escape", ImGuiKey_Escape},
    {"Tab", ImGuiKey_Tab},
    {"+", ImGuiKey_Equal},
    {"=", ImGuiKey_Equal},
    {"-", ImGuiKey_Minus},
    {"ShiftLeft", ImGuiKey_LeftShift},
    {"ShiftRight", ImGuiKey_RightShift},
    {"ControlLeft", ImGuiKey_LeftCtrl},
    {"ControlRight", ImGuiKey_RightCtrl},
    {"AltLeft", ImGuiKey_LeftAlt},
    {"AltRight", ImGuiKey_RightAlt},
    {"NumpadAdd", ImGuiKey_KeypadAdd},
    {"NumpadSubtract", ImGuiKey_KeypadSubtract},
}};

ImGuiKey after(ImGuiKey first, char from, char c) {
    return static_cast<ImGuiKey>(static_cast<int>(first) + (c - from));
}

ImGuiKey row_of(std::string_view word) {
    const auto it =
        std::find_if(rows.begin(), rows.end(), [&](const Row& r) { return r.word == word; });
    return it == rows.end() ? ImGuiKey_None : it->key;
}

} // namespace

ImGuiKey key_of(std::string_view key, std::string_view code) {
    if (code == "NumpadEnter") return ImGuiKey_KeypadEnter;
    if (const ImGuiKey of = row_of(code); of != ImGuiKey_None) return of;
    if (key.size() == 1) {
        const char c = key[0];
        if (c >= 'a' && c <= 'z') return after(ImGuiKey_A, 'a', c);
        if (c >= 'A' && c <= 'Z') return after(ImGuiKey_A, 'A', c);
        if (c >= '0' && c <= '9') return after(ImGuiKey_0, '0', c);
    }
    if (key.size() == 2 && key[0] == 'F' && key[1] >= '1' && key[1] <= '9') {
        return after(ImGuiKey_F1, '1', key[1]);
    }
    return row_of(key);
}

} // namespace wrapwright
