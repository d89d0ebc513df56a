#!/bin/sh
# The report README.md shows: that of the slide bar without its cautions, limits and appendix.
# usage: excerpt.sh REPORT
awk '
    /^[^ ]/ { left_out = /^CAUTIONS/ }
    /^NOT COVERED/ { exit }
    left_out { next }
    /^$/ { blank++; next }
    { while (blank > 0) { print ""; blank-- } print }
' "$1"
