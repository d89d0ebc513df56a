#include "base/num.h"

#include <math.h>
#include <stdlib.h>

void hs_tridiagonal(double *x, const double *lower, const double *diag, const double *upper,
                    double *work, size_t n) {
    double pivot = diag[0];
    x[0] /= pivot;
    for (size_t i = 1; i < n; i++) {
        work[i] = upper[i - 1] / pivot;
        pivot = diag[i] - lower[i] * work[i];
        x[i] = (x[i] - lower[i] * x[i - 1]) / pivot;
    }
    for (size_t i = n - 1; i > 0; i--)
        x[i - 1] -= work[i] * x[i];
}

/* One step of Brent's method: the point to try next, from the bracket b..c and the last point a. */
typedef struct bracket {
    double a, b, c, fa, fb, fc, step, last_step;
} bracket;

static void put_best_first(bracket *k) {
    if (fabs(k->fc) >= fabs(k->fb)) return;
    k->a = k->b;
    k->b = k->c;
    k->c = k->a;
    k->fa = k->fb;
    k->fb = k->fc;
    k->fc = k->fa;
}

static void choose_step(bracket *k, double half, double tolerance) {
    if (fabs(k->last_step) < tolerance || fabs(k->fa) <= fabs(k->fb)) {
        k->step = k->last_step = half;
        return;
    }
    double p, q, s = k->fb / k->fa;
    if (k->a == k->c) {
        p = 2 * half * s;
        q = 1 - s;
    } else {
        double r = k->fb / k->fc, t = k->fa / k->fc;
        p = s * (2 * half * t * (t - r) - (k->b - k->a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
    }
    if (p > 0) q = -q;
    p = fabs(p);
    double bound = fmin(3 * half * q - fabs(tolerance * q), fabs(k->last_step * q));
    k->last_step = 2 * p < bound ? k->step : half;
    k->step = 2 * p < bound ? p / q : half;
}

hs_status hs_root(double *x, hs_function f, const void *context, double a, double b,
                  double tolerance) {
    bracket k = {.a = a, .b = b, .c = a, .fa = f(a, context), .fb = f(b, context)};
    k.fc = k.fa;
    if (!(k.fa * k.fb <= 0)) return HS_E_CONVERGE;
    k.step = k.last_step = b - a;
    for (int i = 0; i < 200; i++) {
        put_best_first(&k);
        double half = 0.5 * (k.c - k.b);
        if (fabs(half) <= tolerance || k.fb == 0) {
            *x = k.b;
            return HS_OK;
        }
        choose_step(&k, half, tolerance);
        k.a = k.b;
        k.fa = k.fb;
        k.b += fabs(k.step) > tolerance ? k.step : copysign(tolerance, half);
        k.fb = f(k.b, context);
        if ((k.fb > 0) == (k.fc > 0)) {
            k.c = k.a;
            k.fc = k.fa;
            k.step = k.last_step = k.b - k.a;
        }
    }
    return HS_E_CONVERGE;
}

double hs_interpolate(const double *x, const double *y, size_t n, double at) {
    if (!(at >= x[0] && at <= x[n - 1])) return NAN;
    size_t low = 0, high = n - 1;
    while (high - low > 1) {
        size_t mid = (low + high) / 2;
        if (x[mid] <= at)
            low = mid;
        else
            high = mid;
    }
    if (at == x[high]) return y[high];
    return y[low] + (y[high] - y[low]) * (at - x[low]) / (x[high] - x[low]);
}

double hs_quantile(const double *sorted, size_t n, double q) {
    double place = q * (double)(n - 1);
    size_t low = (size_t)place;
    if (low + 1 >= n) return sorted[n - 1];
    return sorted[low] + (place - (double)low) * (sorted[low + 1] - sorted[low]);
}

static void swap(double *a, double *b) {
    double keep = *a;
    *a = *b;
    *b = keep;
}

static double middle_of(double a, double b, double c) {
    return fmax(fmin(a, b), fmin(fmax(a, b), c));
}

/* Bring the k-th smallest to place k, none larger before it, none smaller behind. */
static void find(double *v, size_t n, size_t k) {
    size_t low = 0, high = n - 1;
    while (low < high) {
        double pivot = middle_of(v[low], v[low + (high - low) / 2], v[high]);
        size_t i = low, j = high;
        for (;;) {
            while (v[i] < pivot)
                i++;
            while (v[j] > pivot)
                j--;
            if (i >= j) break;
            swap(&v[i++], &v[j--]);
        }
        if (k <= j)
            high = j;
        else
            low = j + 1;
    }
}

double hs_quantile_of(double *values, size_t n, double q) {
    double place = q * (double)(n - 1);
    size_t low = (size_t)place;
    if (low >= n) low = n - 1;
    find(values, n, low);
    if (low + 1 >= n) return values[n - 1];
    double next = values[low + 1];
    for (size_t i = low + 2; i < n; i++)
        next = hs_least(next, values[i]);
    return values[low] + (place - (double)low) * (next - values[low]);
}

static int rising(const void *left, const void *right) {
    double a = *(const double *)left, b = *(const double *)right;
    return (a > b) - (a < b);
}

void hs_sort(double *values, size_t n) {
    qsort(values, n, sizeof *values, rising);
}

unsigned long long hs_hash(unsigned long long hash, const void *data, size_t size) {
    const unsigned char *bytes = data;
    for (size_t i = 0; i < size; i++)
        hash = (hash ^ bytes[i]) * 1099511628211ULL;
    return hash;
}
