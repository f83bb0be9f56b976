"""Which skeins for which parts, as plain typed numbers; alone in naming a solver (HiGHS).

Prices that grow ever slower with the metres have an optimum that is a forest: inside one group of
parts fed by skeins of one kind of yarn there is one change of skein less than skeins, one cut less
than parts and one remnant, whichever way the metres run. So the parts are divided into groups.
"""
