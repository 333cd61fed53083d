#pragma once
// A person at the bench, written down: keys, presses, waits and pictures.

#include "platform/app.h"

#include <filesystem>
#include <string_view>

namespace wrapwright {

/// Does what the lines of a script say, one after the other.
///
///     key space          a key of the map goes down and up; "key 5 space" does so five times
///     press Begin now    the control of that name, where it stands
///     type some words    into the field that has the focus
///     drag LABEL X Y     from the middle of a control, in dots
///     touch LABEL X Y    a press so many dots from its middle
///     wheel LABEL N      over the middle of a control
///     wait 0.6           seconds of the person's clock
///     shot FILE.png      what is shown now
///
/// Keys and presses are 0.6 s apart, so that none is the second of a double press.
/// Fails   malformed, with the line, for what is no such command; not_found for a control or key
///         that is not there
[[nodiscard]] Result<bool> play(Backend& backend, App& app, std::string_view script,
                                const std::filesystem::path& folder);

} // namespace wrapwright
