#include "base/rkc.h"

#include <math.h>
#include <string.h>

size_t hs_rkc_stages(double *step, double fastest) {
    static const double BORNE = 1.54; /* stages^2 - 1 over step * fastest */
    double wanted = ceil(sqrt(1 + BORNE * *step * fastest)) + 1;
    if (wanted > HS_RKC_STAGES) {
        double most = HS_RKC_STAGES - 1;
        *step = (most * most - 1) / (BORNE * fastest);
        return HS_RKC_STAGES;
    }
    return wanted < 3 ? 3 : (size_t)wanted;
}

/* Chebyshev polynomials at w0, their first and second derivatives, of degree j - 1 and j. */
typedef struct chebyshev {
    double w0, T[2], d[2], dd[2];
} chebyshev;

static void advance(chebyshev *c) {
    double T = 2 * c->w0 * c->T[1] - c->T[0];
    double d = 2 * c->w0 * c->d[1] - c->d[0] + 2 * c->T[1];
    double dd = 2 * c->w0 * c->dd[1] - c->dd[0] + 4 * c->d[1];
    c->T[0] = c->T[1], c->T[1] = T;
    c->d[0] = c->d[1], c->d[1] = d;
    c->dd[0] = c->dd[1], c->dd[1] = dd;
}

void hs_rkc_step(double *next, const double *y, size_t n, double step, size_t stages, hs_rate rate,
                 void *context, double *work) {
    double *first = work, *last = work + n, *y0 = work + 2 * n, *y1 = work + 3 * n,
           *y2 = work + 4 * n;
    double m = (double)stages, w0 = 1 + 2 / (13 * m * m), square = w0 * w0 - 1, root = sqrt(square),
           arg = m * log(w0 + root);
    double w1 = sinh(arg) * square / (cosh(arg) * m * root - w0 * sinh(arg));
    double b0 = 1 / (4 * w0 * w0), b1 = b0, weight = step * w1 * b1;
    chebyshev c = {w0, {1, w0}, {0, 1}, {0, 0}};
    for (size_t i = 0; i < n; i++) {
        y0[i] = y[i];
        y1[i] = y[i] + weight * first[i];
    }
    for (size_t j = 2; j <= stages; j++) {
        double a1 = 1 - c.T[1] * b1;
        advance(&c);
        double b = c.dd[1] / (c.d[1] * c.d[1]);
        double mu = 2 * w0 * b / b1, nu = -b / b0, now = step * mu * w1 / w0, then = -now * a1;
        rate(last, y1, context);
        for (size_t i = 0; i < n; i++)
            y2[i] =
                (1 - mu - nu) * y[i] + mu * y1[i] + nu * y0[i] + now * last[i] + then * first[i];
        double *spare = y0;
        y0 = y1;
        y1 = y2;
        y2 = spare;
        b0 = b1;
        b1 = b;
    }
    memcpy(next, y1, n * sizeof *next);
    rate(last, next, context);
}

double hs_rkc_error(const double *next, const double *y, size_t n, double step, const double *work,
                    size_t i) {
    return 0.8 * (y[i] - next[i]) + 0.4 * step * (work[i] + work[n + i]);
}
