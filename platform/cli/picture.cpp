#include "gui/picture.h"

#include "platform/cli/commands.h"
#include "platform/cli/failure.h"
#include "platform/cli/files.h"
#include "platform/cli/load.h"
#include "platform/gl/photographer.h"

#include <cmath>
#include <memory>
#include <string_view>

namespace wrapwright::cli {

namespace {

struct PictureWish {
    std::string recipe, size, hook, out, view = "three-quarter", theme = "light", hand = "right";
    int step = 0; ///< 0: the finished fly
    double turn_deg = 0.0;
    bool dimensions = false;
    bool no_vise = false;
    int width_px = 1600, height_px = 1000;
};

PictureView view_of(const std::string& word) {
    if (word == "side") return PictureView::side;
    if (word == "top") return PictureView::top;
    if (word == "eye") return PictureView::eye;
    return PictureView::three_quarter;
}

/// The last moment of that step; of the whole tying for 0.
int moment_of(const Loaded& loaded, const Tied& tied, int step) {
    const int steps = static_cast<int>(loaded.pattern.recipe.steps.size());
    if (step < 0 || step > steps) {
        refuse_usage("--step: there is no step " + std::to_string(step),
                     "steps are 1 to " + std::to_string(steps));
    }
    int moment = step == 0 ? static_cast<int>(tied.moments.size()) - 1 : 0;
    for (std::size_t i = 0; step > 0 && i < tied.moments.size(); ++i) {
        if (tied.moments[i].step < step) moment = static_cast<int>(i);
    }
    return moment;
}

ExitCode run_picture(const PictureWish& wish) {
    const std::filesystem::path out(wish.out);
    if (out.extension() != ".png") {
        refuse_usage("-o: '" + wish.out + "' is not a .png", "end the name with .png");
    }
    const Loaded loaded = load(wish.recipe, wish.hook);
    if (loaded.is_words_alone()) {
        refuse_usage(loaded.file.string() + ": this recipe is words alone",
                     "give its steps actions, or print it with plan");
    }
    const Fly fly = run(loaded, size_of(loaded, wish.size));
    PictureOptions options;
    options.size = {wish.width_px, wish.height_px};
    // Dimensions are drawn true to scale, which only the side view is.
    options.view = wish.dimensions ? PictureView::side : view_of(wish.view);
    if (!(std::abs(wish.turn_deg) <= 360.0)) { // so that "nan" does not pass
        refuse_usage("--turn is no angle from -360 to 360", "write degrees, such as 90");
    }
    options.turn = degrees(wish.turn_deg);
    options.left_handed = wish.hand == "left";
    options.dimensions = wish.dimensions;
    options.backdrop = wish.theme == "dark" ? Backdrop::dark : Backdrop::light;
    options.vise = !wish.no_vise;

    FlyModel model;
    Scene scene;
    compose_picture(loaded.pattern, fly.tied, moment_of(loaded, fly.tied, wish.step), options,
                    model, scene);
    Result<Photographer> photographer = Photographer::open();
    if (!photographer.ok()) {
        give_up(out, photographer.error().message, photographer.error().remedy);
    }
    const Result<Image> image = photographer.value().take(scene);
    if (!image.ok()) give_up(out, image.error().message, image.error().remedy);
    const std::vector<std::uint8_t> png = png_of(image.value());
    write_file(out, {reinterpret_cast<const char*>(png.data()), png.size()});
    return ExitCode::fine;
}

} // namespace

void add_picture(const Command& program, Job& job) {
    auto wish = std::make_shared<PictureWish>();
    const Command command = program.command("picture", "The fly in the vise, as a PNG");
    command.option("RECIPE", wish->recipe, "recipe file or name").required();
    command.option("--size", wish->size, "hook size, such as 14; else the middle one");
    command.option("--hook", wish->hook, "file of your own measured hook");
    command.option("--step", wish->step, "as it is after that step; else the finished fly");
    command.option("--turn", wish->turn_deg,
                   "degrees about the shank, -360 to 360, top away from you first");
    command.option("--view", wish->view, "three-quarter, side, top or eye")
        .one_of({"three-quarter", "side", "top", "eye"});
    command.flag("--dimensions", wish->dimensions, "with dimension lines in mm, from the side");
    command.option("--theme", wish->theme, "light or dark").one_of({"light", "dark"});
    command.option("--hand", wish->hand, "right or left: left mirrors the picture")
        .one_of({"right", "left"});
    command.flag("--no-vise", wish->no_vise, "without the vise");
    command.option("--width", wish->width_px, "pixels").within(160, 6000);
    command.option("--height", wish->height_px, "pixels").within(120, 6000);
    command.option("-o,--out", wish->out, "FILE.png").required();
    command.runs(job, wish, run_picture);
}

} // namespace wrapwright::cli
