"""Several tests at once, against the published example and statsmodels."""

from __future__ import annotations

from random import Random

from statsmodels.stats.multitest import multipletests

from drills.measures.several import standing_out

# Benjamini and Hochberg 1995, section 3.2 (from memory): of fifteen p, the four smallest stand out
# at .05, where Bonferroni's bound leaves three.
PUBLISHED = [
    *(0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344),
    *(0.0459, 0.3240, 0.4262, 0.5719, 0.6528, 0.7590, 1.0000),
]


def test_the_published_fifteen_give_the_first_four():
    assert standing_out(PUBLISHED, 0.05) == (0, 1, 2, 3)
    assert standing_out(PUBLISHED[::-1], 0.05) == (11, 12, 13, 14)


def test_a_thousand_random_families_are_as_in_statsmodels():
    rng = Random(3)
    for _ in range(1000):
        chances = [rng.random() ** rng.choice((1, 4)) for _ in range(rng.randint(1, 20))]
        expected = multipletests(chances, alpha=0.1, method="fdr_bh")[0]
        assert standing_out(chances, 0.1) == tuple(
            place for place, stands in enumerate(expected) if stands
        )


def test_no_test_stands_out_of_none():
    assert standing_out([], 0.05) == ()
