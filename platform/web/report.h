#pragma once
// What the page has to know of each frame: the outline for a screen reader, the field that is typed
// into, whether to stay awake, and the state for tests. Told only when it has changed.

#include "gui/spoken.h"
#include "platform/app.h"

#include <string>
#include <vector>

namespace wrapwright {

class Report {
  public:
    void tell(const App& app);

  private:
    void tell_field(const Shown& shown);

    std::vector<OutlineRow> outline_{};
    std::string state_{}, field_{}, ground_{};
    bool awake_ = false;
};

} // namespace wrapwright
