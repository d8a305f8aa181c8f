/* The interface model's step as a plain loop, for comparison with the managed one: same layout, same order, same
   arithmetic (one rectangle of cells in a border). Compile: gcc -O3 -march=native -shared -fPIC. */
#include <stddef.h>

typedef struct {
    double *restrict offset, *restrict east, *restrict north;
    const double *restrict east_root, *restrict north_root, *restrict east_keep, *restrict north_keep, *restrict east_push, *restrict north_push;
} fields;

static void north_row(const fields *f, ptrdiff_t start, ptrdiff_t count, ptrdiff_t stride, double slope, double turn)
{
    double *restrict offset = f->offset, *restrict east = f->east, *restrict north = f->north;
    const double *restrict root = f->north_root, *restrict keep = f->north_keep, *restrict push = f->north_push;
    for (ptrdiff_t i = start; i < start + count; i++) {
        double across = (east[i - 1] + east[i]) + (east[i - 1 + stride] + east[i + stride]);
        double gain = push[i] - turn * across - slope * root[i] * (offset[i + stride] - offset[i]);
        north[i] = keep[i] * north[i] + (0.5 + 0.5 * keep[i]) * gain;
    }
}

void layers_steps(double *offset_, double *east_, double *north_, const double *east_root, const double *north_root,
                  const double *east_keep, const double *north_keep, const double *east_push, const double *north_push,
                  ptrdiff_t nx, ptrdiff_t ny, ptrdiff_t stride, double flow, double slope, double turn, int steps)
{
    fields f = { offset_, east_, north_, east_root, north_root, east_keep, north_keep, east_push, north_push };
    double *restrict offset = offset_, *restrict east = east_, *restrict north = north_;
    for (int step = 0; step < steps; step++) {
        for (ptrdiff_t row = 1; row <= ny; row++) {
            ptrdiff_t start = row * stride + 1;
            for (ptrdiff_t i = start; i < start + nx; i++) {
                double across = east[i] * east_root[i] - east[i - 1] * east_root[i - 1];
                double along = north[i] * north_root[i] - north[i - stride] * north_root[i - stride];
                offset[i] -= flow * (across + along);
            }
            for (ptrdiff_t i = start; i < start + nx; i++) {
                double across = (north[i] + north[i + 1]) + (north[i - stride] + north[i + 1 - stride]);
                double gain = east_push[i] + turn * across - slope * east_root[i] * (offset[i + 1] - offset[i]);
                east[i] = east_keep[i] * east[i] + (0.5 + 0.5 * east_keep[i]) * gain;
            }
            if (row > 1) north_row(&f, start - stride, nx, stride, slope, turn);
        }
        north_row(&f, ny * stride + 1, nx, stride, slope, turn);
    }
}

void triad(double *restrict a, const double *restrict b, const double *restrict c, double s, ptrdiff_t n)
{
    for (ptrdiff_t i = 0; i < n; i++) a[i] = b[i] + s * c[i];
}
