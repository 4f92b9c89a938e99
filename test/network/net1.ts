/**
 * EPANET example network 1, hydraulics at hour 0: a one-point pump curve, nine junctions with
 * demands in two loops, a reservoir and a tank at 970 ft. US EPA, public domain; data as in
 * OpenWaterAnalytics/EPANET, tests/epanet-nrtestsuite/tests/examples/example1.inp.
 */
export const net1 = `
[JUNCTIONS]
10 710 0
11 710 150
12 700 150
13 695 100
21 700 150
22 695 200
23 690 150
31 700 100
32 710 100
[RESERVOIRS]
9 800
[TANKS]
2 850 120 100 150 50.5 0
[PIPES]
10 10 11 10530 18 100 0
11 11 12 5280 14 100 0
12 12 13 5280 10 100 0
21 21 22 5280 10 100 0
22 22 23 5280 12 100 0
31 31 32 5280 6 100 0
110 2 12 200 18 100 0
111 11 21 5280 10 100 0
112 12 22 5280 12 100 0
113 13 23 5280 8 100 0
121 21 31 5280 8 100 0
122 22 32 5280 6 100 0
[PUMPS]
9 9 10 HEAD 1
[CURVES]
1 1500 250
[TIMES]
DURATION 0
[OPTIONS]
UNITS GPM
HEADLOSS H-W
TRIALS 40
ACCURACY 1e-6
[END]
`;
