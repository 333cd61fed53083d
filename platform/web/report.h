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
    /// Another program stands behind the page: all is told anew.
    void forget() {
        outline_.clear();
        state_.clear();
        field_.clear();
    }
    /// The page has left its field: if the program stays in it, it is told anew.
    void left_field() { field_.clear(); }

  private:
    void tell_field(const Shown& shown);
    void tell_caret(const DrawnField& field);

    std::vector<OutlineRow> outline_{};
    std::string state_{}, field_{}, ground_{};
    int caret_[2] = {-1, -1};
    bool awake_ = false, busy_ = false;
};

} // namespace wrapwright
