// Backend without a screen: a picture in memory, and a clock that goes on only while it waits.

#include "platform/backend.h"
#include "platform/gl/offscreen.h"
#include "platform/gl/target.h"

#include <imgui.h>

namespace wrapwright {

struct Backend::World {
    Offscreen offscreen;
    Target target{};
    double now = 0.0;
    double last_frame = 0.0;
    bool closing = false;
};

Backend::Backend(std::unique_ptr<World> world) : world_(std::move(world)) {}
Backend::Backend(Backend&&) noexcept = default;
Backend::~Backend() = default;

Result<Backend> Backend::open(const WindowWish& wish) {
    Result<Offscreen> offscreen = Offscreen::open();
    if (!offscreen.ok()) return offscreen.error();
    std::unique_ptr<World> world(new World{std::move(offscreen).value()});
    Result<Target> target = Target::make(world->offscreen.gl(), TargetKind::colour, wish.size);
    if (!target.ok()) return target.error();
    world->target = std::move(target).value();
    return Backend(std::move(world));
}

const Gl& Backend::gl() const { return world_->offscreen.gl(); }

GLuint Backend::framebuffer() const { return world_->target.framebuffer(); }

PixelSize Backend::size() const { return world_->target.size(); }

float Backend::scale() const { return 1.0F; }

double Backend::dots_per_mm() const { return 0.0; }

Duration Backend::clock() const { return seconds(world_->now); }

// Always the same day, 2026-05-01, so that what is stored does not vary.
Duration Backend::wall_clock() const { return seconds(1'777'593'600.0 + world_->now); }

bool Backend::wait(Duration longest) {
    world_->now += in_seconds(longest);
    return true;
}

void Backend::begin_frame() {
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {static_cast<float>(size().width), static_cast<float>(size().height)};
    io.DeltaTime = static_cast<float>(world_->now - world_->last_frame);
    if (io.DeltaTime <= 0.0F) io.DeltaTime = 1.0F / 60.0F;
    world_->last_frame = world_->now;
}

void Backend::present() {}

std::vector<std::string> Backend::dropped() { return {}; }

std::string Backend::screen_name() const { return {}; }

void Backend::tick() {}

void Backend::say(const std::string&) {}

bool Backend::picks_files() const { return false; }

bool Backend::has_camera() const { return false; }

void Backend::pick(FileKind) {}

void Backend::give(const std::filesystem::path&) {}

bool Backend::is_closing() const { return world_->closing; }

void Backend::close() { world_->closing = true; }

} // namespace wrapwright
