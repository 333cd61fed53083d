#include "core/check/period.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

namespace wrapwright {

namespace {

constexpr double pi = std::numbers::pi;
constexpr int harmonics = 3;
constexpr int shading = 4;                     // coefficients of the cubic
constexpr int terms = shading + 2 * harmonics; // of the whole fit

/// Normal equations of least squares, solved by elimination without pivoting of a positive matrix.
template <int count>
struct Normal {
    std::array<std::array<double, count>, count> a{};
    std::array<double, count> b{};
    double yy = 0.0;

    void add(const std::array<double, count>& row, double y) {
        for (std::size_t i = 0; i < count; ++i) {
            for (std::size_t j = i; j < count; ++j) a[i][j] += row[i] * row[j];
            b[i] += row[i] * y;
        }
        yy += y * y;
    }
    /// Coefficients and the squares that are left; nothing where the columns are one another's.
    struct Fit {
        std::array<double, count> c{};
        double left = 0.0;
    };
    [[nodiscard]] std::optional<Fit> solve() const {
        std::array<std::array<double, count>, count> l{};
        for (std::size_t i = 0; i < count; ++i) { // Cholesky
            for (std::size_t j = 0; j <= i; ++j) {
                double s = a[j][i];
                for (std::size_t k = 0; k < j; ++k) s -= l[i][k] * l[j][k];
                if (i == j) {
                    if (!(s > 1e-12 * a[i][i])) return std::nullopt;
                    l[i][i] = std::sqrt(s);
                } else {
                    l[i][j] = s / l[j][j];
                }
            }
        }
        Fit fit;
        std::array<double, count> z{};
        fit.left = yy;
        for (std::size_t i = 0; i < count; ++i) {
            double s = b[i];
            for (std::size_t k = 0; k < i; ++k) s -= l[i][k] * z[k];
            z[i] = s / l[i][i];
            fit.left -= z[i] * z[i];
        }
        for (std::size_t i = count; i-- > 0;) {
            double s = z[i];
            for (std::size_t k = i + 1; k < count; ++k) s -= l[k][i] * fit.c[k];
            fit.c[i] = s / l[i][i];
        }
        fit.left = std::max(0.0, fit.left);
        return fit;
    }
};

std::array<double, shading> cubic_row(std::size_t i, std::size_t n) {
    const double u = n > 1 ? 2.0 * static_cast<double>(i) / static_cast<double>(n - 1) - 1.0 : 0.0;
    return {1.0, u, u * u, u * u * u};
}

/// The samples without their cubic trend.
std::vector<double> detrended(std::span<const double> y) {
    Normal<shading> normal;
    for (std::size_t i = 0; i < y.size(); ++i) normal.add(cubic_row(i, y.size()), y[i]);
    std::vector<double> z(y.begin(), y.end());
    const auto fit = normal.solve();
    if (!fit) return z;
    for (std::size_t i = 0; i < z.size(); ++i) {
        const auto row = cubic_row(i, y.size());
        for (std::size_t k = 0; k < shading; ++k) z[i] -= fit->c[k] * row[k];
    }
    return z;
}

/// Three points of a peak: how far its top lies from the middle one.
double top_of(double a, double b, double c) {
    const double bend = a - 2.0 * b + c;
    return bend < 0.0 ? std::clamp(0.5 * (a - c) / bend, -0.5, 0.5) : 0.0;
}

/// The frequency (per sample) where the windowed spectrum is highest, between two.
double spectrum_peak(const std::vector<double>& z, double least, double most) {
    const std::size_t n = z.size();
    std::vector<double> w(n);
    for (std::size_t i = 0; i < n; ++i) {
        w[i] =
            z[i] *
            (0.5 - 0.5 * std::cos(2.0 * pi * static_cast<double>(i) / static_cast<double>(n - 1)));
    }
    const auto power = [&](double f) {
        const double c = std::cos(2.0 * pi * f), s = std::sin(2.0 * pi * f);
        double re = 0.0, im = 0.0, x = 1.0, y = 0.0;
        for (const double v : w) { // a phasor that turns on, sample by sample
            re += v * x;
            im += v * y;
            const double turned = x * c - y * s;
            y = y * c + x * s;
            x = turned;
        }
        return re * re + im * im;
    };
    const double step = 1.0 / (4.0 * static_cast<double>(n));
    const int count = std::max(3, static_cast<int>(std::ceil((most - least) / step)) + 1);
    int best = 0;
    double highest = -1.0;
    for (int i = 0; i < count; ++i) {
        const double p = power(least + i * step);
        if (p > highest) {
            highest = p;
            best = i;
        }
    }
    const double f = least + best * step;
    const auto log_power = [&](double at) { return std::log(power(at) + 1e-300); };
    return f + step * top_of(log_power(f - step), log_power(f), log_power(f + step));
}

/// The first shift at which the samples are nearly as like themselves as they ever are.
double shift_peak(const std::vector<double>& z, double least, double most) {
    const auto n = static_cast<int>(z.size());
    const int to = std::min(n - 2, static_cast<int>(most) + 2);
    std::vector<double> r(static_cast<std::size_t>(to) + 2, 0.0);
    for (int k = 0; k <= to; ++k) {
        double s = 0.0;
        for (int i = 0; i + k < n; ++i) {
            s += z[static_cast<std::size_t>(i)] * z[static_cast<std::size_t>(i + k)];
        }
        r[static_cast<std::size_t>(k)] = s / (n - k);
    }
    const int from = std::max(1, static_cast<int>(least));
    const auto is_peak = [&](int k) {
        const auto i = static_cast<std::size_t>(k);
        return r[i] > r[i - 1] && r[i] >= r[i + 1];
    };
    double highest = 0.0;
    for (int k = from; k < to; ++k) {
        if (is_peak(k)) highest = std::max(highest, r[static_cast<std::size_t>(k)]);
    }
    for (int k = from; k < to; ++k) {
        const auto i = static_cast<std::size_t>(k);
        if (highest > 0.0 && is_peak(k) && r[i] >= 0.8 * highest) {
            return k + top_of(r[i - 1], r[i], r[i + 1]);
        }
    }
    return 0.0;
}

/// A cubic and three harmonics of that frequency, by least squares.
std::optional<Normal<terms>::Fit> harmonic_fit(std::span<const double> y, double f) {
    Normal<terms> normal;
    std::array<double, terms> row{};
    for (std::size_t i = 0; i < y.size(); ++i) {
        const auto cubic = cubic_row(i, y.size());
        std::copy(cubic.begin(), cubic.end(), row.begin());
        const double a = 2.0 * pi * f * static_cast<double>(i);
        const double c1 = std::cos(a), s1 = std::sin(a);
        double c = c1, s = s1;
        for (std::size_t k = 0; k < harmonics; ++k) {
            row[shading + 2 * k] = c;
            row[shading + 2 * k + 1] = s;
            const double next = c * c1 - s * s1;
            s = s * c1 + c * s1;
            c = next;
        }
        normal.add(row, y[i]);
    }
    return normal.solve();
}

/// The frequency with the least left over, within three quarters of a bin of a start.
double refined(std::span<const double> y, double start) {
    const double n = static_cast<double>(y.size());
    const auto left = [&](double f) {
        const auto fit = harmonic_fit(y, f);
        return fit ? fit->left : 1e300;
    };
    const double reach = std::min(0.75 / n, 0.3 * start);
    constexpr int steps = 12;
    int best = 0;
    double least = 1e301;
    for (int i = 0; i <= steps; ++i) {
        const double v = left(start - reach + 2.0 * reach * i / steps);
        if (v < least) {
            least = v;
            best = i;
        }
    }
    double a = start - reach + 2.0 * reach * std::max(0, best - 1) / steps;
    double b = start - reach + 2.0 * reach * std::min(steps, best + 1) / steps;
    constexpr double golden = 0.6180339887498949;
    double x = b - golden * (b - a), z = a + golden * (b - a);
    double fx = left(x), fz = left(z);
    for (int i = 0; i < 30; ++i) {
        if (fx < fz) {
            b = z;
            z = x;
            fz = fx;
            x = b - golden * (b - a);
            fx = left(x);
        } else {
            a = x;
            x = z;
            fx = fz;
            z = a + golden * (b - a);
            fz = left(z);
        }
    }
    return 0.5 * (a + b);
}

/// The standard error of a period from what the fit leaves.
/// Source  Cramer-Rao for a frequency: var f = 6 s^2 / (pi^2 N^3 sum k^2 A_k^2), N samples
double error_of(const Normal<terms>::Fit& fit, double samples, double period) {
    const double s2 = fit.left / std::max(1.0, samples - terms - 1.0);
    double strength = 0.0;
    for (std::size_t k = 0; k < harmonics; ++k) {
        const double c = fit.c[shading + 2 * k], s = fit.c[shading + 2 * k + 1];
        strength += static_cast<double>((k + 1) * (k + 1)) * (c * c + s * s);
    }
    if (!(strength > 0.0)) return period;
    const double sd_f = std::sqrt(6.0 * s2 / (pi * pi * samples * samples * samples * strength));
    return period * std::min(1.0, sd_f * period);
}

std::vector<double> smoothed(const std::vector<double>& z, double sigma) {
    const int reach = std::max(1, static_cast<int>(std::ceil(3.0 * sigma)));
    const auto n = static_cast<int>(z.size());
    std::vector<double> out(z.size());
    for (int i = 0; i < n; ++i) {
        double sum = 0.0, weight = 0.0;
        for (int k = std::max(0, i - reach); k <= std::min(n - 1, i + reach); ++k) {
            const double w = std::exp(-0.5 * (k - i) * (k - i) / (sigma * sigma));
            sum += w * z[static_cast<std::size_t>(k)];
            weight += w;
        }
        out[static_cast<std::size_t>(i)] = sum / weight;
    }
    return out;
}

/// One mark for each rib, and how unevenly they follow each other.
void mark(const std::vector<double>& z, Period& out) {
    const std::vector<double> s = smoothed(z, std::max(0.6, 0.12 * out.value));
    std::vector<double> sorted = s;
    const auto high = sorted.begin() + static_cast<std::ptrdiff_t>(98 * (s.size() - 1) / 100);
    std::nth_element(sorted.begin(), high, sorted.end());
    const double floor = 0.3 * *high;
    for (std::size_t i = 1; i + 1 < s.size(); ++i) {
        if (!(s[i] > s[i - 1] && s[i] >= s[i + 1] && s[i] > floor)) continue;
        const double at = static_cast<double>(i) + top_of(s[i - 1], s[i], s[i + 1]);
        if (!out.marks.empty() && at - out.marks.back() < 0.6 * out.value) {
            const auto before = static_cast<std::size_t>(std::lround(out.marks.back()));
            if (s[i] > s[before]) out.marks.back() = at; // the higher of two highlights
            continue;
        }
        out.marks.push_back(at);
    }
    if (out.marks.size() < 3) return;
    // Index by rounding, so that a rib that cannot be seen leaves a gap; then a straight line.
    double sx = 0.0, sy = 0.0, sxx = 0.0, sxy = 0.0;
    const auto n = static_cast<double>(out.marks.size());
    std::vector<double> index;
    for (const double m : out.marks) {
        index.push_back(std::round((m - out.marks.front()) / out.value));
        sx += index.back();
        sy += m;
        sxx += index.back() * index.back();
        sxy += index.back() * m;
    }
    const double slope = (n * sxy - sx * sy) / std::max(1e-12, n * sxx - sx * sx);
    const double start = (sy - slope * sx) / n;
    double squares = 0.0;
    for (std::size_t i = 0; i < out.marks.size(); ++i) {
        const double off = out.marks[i] - start - slope * index[i];
        squares += off * off;
    }
    const double sd = n > 2.0 ? std::sqrt(squares / (n - 2.0)) : 0.0;
    out.unevenness = sd / out.value;
    // Ribs that are set unevenly: the error of a slope through n marks, sd sqrt(12 / (n^3 - n)).
    out.sd = std::hypot(out.sd, sd * std::sqrt(12.0 / (n * n * n - n)));
}

} // namespace

Period period_of(std::span<const double> samples, PeriodRange range) {
    Period out;
    const auto n = static_cast<double>(samples.size());
    if (n < 12.0) return out;
    for (const double v : samples) {
        if (!(std::abs(v) < 1e100)) return out; // no NaN gets further
    }
    const double least = range.least > 0.0 ? std::max(2.5, range.least) : std::max(2.5, n / 20.0);
    const double most = range.most > 0.0 ? std::min(0.5 * n, range.most) : n / 3.0;
    if (!(least < most)) return out;
    const std::vector<double> z = detrended(samples);
    double contrast = 0.0, size = 0.0;
    for (std::size_t i = 0; i < z.size(); ++i) {
        contrast += z[i] * z[i];
        size += samples[i] * samples[i];
    }
    if (!(contrast > 1e-18 * size) || !(contrast > 0.0)) return out;
    const double f = spectrum_peak(z, 1.0 / most, 1.0 / least);
    if (!(f > 0.0)) return out;
    out.by_spectrum = 1.0 / f;
    out.by_shift = shift_peak(z, least, most);
    out.agree = out.by_shift > 0.0 && std::abs(out.by_shift / out.by_spectrum - 1.0) < 0.08;
    const double best = refined(samples, f);
    const auto fit = harmonic_fit(samples, best);
    if (!fit || !(best > 0.0)) return out;
    // Noise alone reaches an F of about 3 by the search for the best frequency.
    constexpr double least_f = 8.0;
    const double explained = (contrast - fit->left) / (2.0 * harmonics);
    if (!(explained > least_f * fit->left / std::max(1.0, n - terms - 1.0))) {
        out.agree = false;
        return out;
    }
    out.value = 1.0 / best;
    out.sd = error_of(*fit, n, out.value);
    mark(z, out);
    return out;
}

} // namespace wrapwright
