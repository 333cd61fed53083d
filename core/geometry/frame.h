#pragma once
// Frames along a curve that turn no more than the curve makes them.

#include <cmath>
#include <glm/geometric.hpp>
#include <glm/vec3.hpp>

namespace wrapwright {

/// Any unit vector across `tangent`, for the start of a curve.
template <class Real>
glm::vec<3, Real> any_normal(const glm::vec<3, Real>& tangent) {
    // Off the axis that lies most across, so that the cross product is never short.
    const auto a = glm::abs(tangent);
    const glm::vec<3, Real> axis = a.y <= a.x && a.y <= a.z ? glm::vec<3, Real>(0, 1, 0)
                                   : a.z <= a.x             ? glm::vec<3, Real>(0, 0, 1)
                                                            : glm::vec<3, Real>(1, 0, 0);
    const auto n = axis - glm::dot(axis, tangent) * tangent;
    return n / std::sqrt(glm::dot(n, n));
}

/// The normal at the next point of a curve, turned about the tangent as little as can be.
///
/// `chord` is the unit vector from this point to the next; t0 and t1 are unit tangents, n0 is
/// across t0.
/// Error   fourth order in the step; n1 is across t1 to rounding
/// Source  Wang, Juettler, Zheng and Liu, Computation of rotation minimizing frames, ACM
///         Transactions on Graphics 27 (2008) article 2, table I: reflect the frame in the plane
///         halfway along the chord, then in the one that lays its tangent on t1
template <class Real>
glm::vec<3, Real> next_normal(const glm::vec<3, Real>& chord, const glm::vec<3, Real>& t0,
                              const glm::vec<3, Real>& t1, const glm::vec<3, Real>& n0) {
    const auto mirrored_n = n0 - (2 * glm::dot(chord, n0)) * chord;
    const auto mirrored_t = t0 - (2 * glm::dot(chord, t0)) * chord;
    const auto v = t1 - mirrored_t;
    const Real square = glm::dot(v, v);
    // |v| is 2 on a straight stretch; it vanishes only where the curve turns straight back.
    const Real k = square > Real(1e-12) ? 2 / square : Real(0);
    return mirrored_n - (k * glm::dot(v, mirrored_n)) * v;
}

} // namespace wrapwright
