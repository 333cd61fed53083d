#pragma once
// A fly's pieces in the driver's memory.

#include "gui/scene.h"
#include "platform/gl/grain.h"
#include "platform/gl/object.h"

#include <vector>

namespace wrapwright {

/// The buffers of one model, kept from picture to picture and refilled when the model changes.
class PieceBuffers {
  public:
    /// One piece as it lies in the buffers.
    struct Range {
        GLsizei count = 0;       ///< indices
        std::size_t offset = 0;  ///< of the first, in bytes
        glm::vec3 low{}, high{}; ///< mm
    };

    /// Sends the scene's model, unless one with its stamp (not 0) is there already.
    void send(const Gl& gl, const Scene& scene);
    void draw(const Gl& gl, std::size_t piece) const;
    [[nodiscard]] const std::vector<Range>& ranges() const { return ranges_; }

  private:
    std::uint64_t stamp_ = 0;
    bool filled_ = false;
    GlVertexArray array_;
    GlBuffer vertices_, grains_, indices_;
    std::vector<Range> ranges_;
};

} // namespace wrapwright
