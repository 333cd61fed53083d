#pragma once
// The places that a person marks on a photo of a fly, and the lengths that follow.

#include "core/check/proportions.h"
#include "core/check/rib_measure.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace wrapwright {

/// What the millimetres of a photo come from.
enum class ScaleBy : unsigned char {
    card,   ///< four corners of an ID-1 card
    points, ///< two points of a distance that is typed
    shank,  ///< eye and bend as they are marked: the hook's own
    gape,   ///< two points across the gape: the hook's own
};

/// A place on the photo, in the order that they are asked for.
enum class PhotoSpot : unsigned char {
    scale_1,
    scale_2,
    scale_3,
    scale_4,
    eye,        ///< its back, where the shank begins
    bend,       ///< where the shank ends
    tail_end,   ///< tips of the tail
    body_start, ///< the end next to the eye
    body_end,
    hackle_tip,
    line_start, ///< of a line along the ribs
    line_end,
};
inline constexpr std::size_t photo_spots = 12;
/// "scale 1", "eye", "tail end" ...
[[nodiscard]] std::string_view name(PhotoSpot spot);
/// The spot of that name.
[[nodiscard]] std::optional<PhotoSpot> photo_spot(std::string_view word);

/// Which of the two ways a person took, where they do not agree.
enum class RibChoice : unsigned char { unmade, by_spectrum, by_shift };

/// Everything that a person marks on a photo; pixels.
struct PhotoMarks {
    ScaleBy scale_by = ScaleBy::card;
    Length known{}; ///< between the two points
    std::array<std::optional<glm::dvec2>, photo_spots> at{};
    bool flipped = false; ///< the hook's point is upward in the picture
    RibChoice choice = RibChoice::unmade;

    [[nodiscard]] const std::optional<glm::dvec2>& operator[](PhotoSpot s) const {
        return at[static_cast<std::size_t>(s)];
    }
    [[nodiscard]] std::optional<glm::dvec2>& operator[](PhotoSpot s) {
        return at[static_cast<std::size_t>(s)];
    }
};

/// How many points of its own that way of scaling takes.
[[nodiscard]] std::size_t scale_points(ScaleBy by);

/// The scale of the marks on the hook that is tied on.
///
/// Fails   not_found for points that are not set yet; as PhotoScale::card and two_points do
[[nodiscard]] Result<PhotoScale> scale_of(const PhotoMarks& marks, const BaseRun& base);

/// Relative standard error of the known distance: the hook's own where the scale is by the hook.
[[nodiscard]] double scale_share(ScaleBy by, const BaseRun& base);

/// Lengths between the marks; nothing where one of them is missing.
struct PhotoLengths {
    std::optional<Estimate<Length>> shank{};
    std::array<std::optional<Estimate<Length>>, 5> parts{}; ///< by Measured
    std::array<std::optional<Length>, photo_spots> along{}; ///< from the eye, along the shank
};

/// The lengths of the marked parts.
///
/// The tail from where the body ends (the bend where that is not marked) to its tips, the hackle
/// from its tip to the nearest place between eye and body.
[[nodiscard]] PhotoLengths lengths_of(const PhotoMarks& marks, const PhotoScale& scale,
                                      const PhotoDoubt& doubt);

/// Where a place of the fly's own plane comes to on the photo, so that eye and bend meet their marks.
class FlyOnPhoto {
  public:
    /// Nothing where eye or bend are not marked or stand on one another.
    [[nodiscard]] static std::optional<FlyOnPhoto>
    make(const PhotoMarks& marks, const PhotoScale& scale, const BaseRun& base);
    /// x tailward, y away from the point, m in the hook's own plane; in px.
    [[nodiscard]] glm::dvec2 pixel(const glm::dvec2& on_hook) const;

  private:
    explicit FlyOnPhoto(const PhotoScale& scale) : scale_(scale) {}
    PhotoScale scale_;
    glm::dvec2 from_{}, origin_{}, along_{1.0, 0.0}, up_{0.0, 1.0};
};

/// The place of the strongest edge within a radius, nearer ones before stronger ones; the same place
/// where there is none.
/// Error   a straight edge of a smooth picture to some tenths of a pixel
[[nodiscard]] glm::dvec2 snap_to_edge(const GreyView& photo, const glm::dvec2& place,
                                      double radius);

/// The corners of a card by lines along its edges, for its own corners are rounded; as they were
/// where an edge is not seen.
///
/// Valid   corners in order round the card, each within `radius` of the lines of its edges
/// Source  ISO/IEC 7810: corner radius 3.18 mm (from memory): the middle 70 % of each edge is used
[[nodiscard]] std::array<glm::dvec2, 4>
card_by_edges(const GreyView& photo, const std::array<glm::dvec2, 4>& corners, double radius);

/// The marks as one line of text, and back; what is not understood is left out.
[[nodiscard]] std::string text_of(const PhotoMarks& marks);
[[nodiscard]] PhotoMarks photo_marks_of(std::string_view text);

} // namespace wrapwright
