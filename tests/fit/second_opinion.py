# /// script
# requires-python = ">=3.11"
# dependencies = ["numpy==2.4.6", "scipy==1.17.1"]
# ///
"""A second opinion on the core: the same questions, asked of random boards, answered from textbooks.

    python tests/fit/second_opinion.py              every subject
    python tests/fit/second_opinion.py charge       one of them

One file a subject in `opinion/`, written from the documented equations and from textbooks, not from the Rust.
Each draws its boards by a fixed seed, has the core answer them through the example `answer_lines`, and prints the worst
differences; `opinion/findings.md` explains them. Run by hand: it has no bounds of its own.
"""

import sys

from opinion import charge, hill, ride, weak_hill

SUBJECTS = {"charge": charge, "hill": hill, "weak_hill": weak_hill, "ride": ride}


def main():
    for name in sys.argv[1:] or SUBJECTS:
        print(f"== {name}")
        SUBJECTS[name].compare()


if __name__ == "__main__":
    main()
