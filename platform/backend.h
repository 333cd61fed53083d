#pragma once
// The outside world as the loop sees it: a window with its input, and the clocks.
//
// One class, declared here and defined by the program that is linked: a real window on the desktop,
// a picture in memory where there is no screen.

#include "core/units/quantity.h"
#include "gui/camera.h"
#include "gui/model.h"
#include "platform/gl/api.h"

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace wrapwright {

/// The window that is asked for.
struct WindowWish {
    std::string title;
    PixelSize size{1280, 800};
    bool full_screen = false;
};

/// A window, current on this thread while it lives. One at a time in a program.
///
/// It feeds the current ImGui context, which must outlive it.
class Backend {
  public:
    /// Fails   not_found when there is no screen, no driver, or none of that kind, with the remedy
    [[nodiscard]] static Result<Backend> open(const WindowWish& wish);
    Backend(Backend&&) noexcept;
    Backend& operator=(Backend&&) = delete;
    ~Backend();

    [[nodiscard]] const Gl& gl() const;
    /// Where to draw.
    [[nodiscard]] GLuint framebuffer() const;
    /// The picture's size in dots.
    [[nodiscard]] PixelSize size() const;
    /// Dots for each unit in which windows are laid out; 1 but on fine screens of the web.
    [[nodiscard]] float scale() const;
    /// Units for each millimetre of the screen as it tells; 0 where it does not.
    [[nodiscard]] double dots_per_mm() const;

    /// A clock that never goes back, from any fixed moment.
    [[nodiscard]] Duration clock() const;
    /// Seconds since 1970-01-01 UTC.
    [[nodiscard]] Duration wall_clock() const;

    /// Sleeps until there is input or that time is over, and hands the input to ImGui.
    ///
    /// Returns whether there is anything that asks for a frame.
    [[nodiscard]] bool wait(Duration longest);
    /// Tells ImGui the size of the picture and the time since the last frame.
    void begin_frame();
    /// Shows what was drawn.
    void present();

    /// The files that were dropped on the window since the last call.
    [[nodiscard]] std::vector<std::string> dropped();
    /// What the screen calls itself, with its size; empty where it does not.
    [[nodiscard]] std::string screen_name() const;

    /// One tick, where there is sound.
    void tick();
    /// Reads a text aloud, instead of what is being read; an empty one ends it. Silent where the
    /// system has no voice.
    void say(const std::string& text);

    /// Whether the system's own dialogs pick files, whose copies come in by dropped().
    [[nodiscard]] bool picks_files() const;
    [[nodiscard]] bool has_camera() const;
    void pick(FileKind kind);
    /// Hands a file that was written to the person. Nothing to do where files lie in folders.
    void give(const std::filesystem::path& file);

    [[nodiscard]] bool is_closing() const;
    void close();

  private:
    struct World;
    explicit Backend(std::unique_ptr<World> world);
    std::unique_ptr<World> world_;
};

} // namespace wrapwright
