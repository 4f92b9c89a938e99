import { paragraphs } from "../../engine/template/index.js";

/** The mathematics in words. */
export const how = [
  paragraphs(
    "What is compared",
    "A built job tells for each task what was done and how many man-hours it took. Its rate is the quantity by the hours, times the time factor that the job was planned with (access, hauling, soil), so that what is left is the rate of the office book. The pace is that rate by the rate in the book: 1.20 is a fifth more an hour than the book says.",
    "All is calculated with the logarithm of the pace, since twice as fast and half as fast are equally far from the book, and no rate can fall below nothing.",
  ),
  paragraphs(
    "From jobs to a rate",
    "The book's rate is where learning begins. It counts as so many jobs as the office says (Book counts as jobs). Each built job pulls the rate its way by its weight: large tasks more than small ones, recent jobs more than old ones. With no job the book's rate stands; with many, the jobs decide.",
    "Weight by size: hours by the book / (hours by the book + man-hours that count half). It never passes 1: one very long job is still one job. Weight by age: one half for each half-life. Rows of one job with the same rate count as one job together.",
    "Learned rate = rate in the book x e^(sum of weights x log of pace / (book counts as jobs + sum of weights)).",
    "Spread between jobs: as the jobs show it, joined with the spread expected, which counts as so many jobs as the office says. Few jobs that agree by chance so do not tell a spread of nothing. Where the jobs stray from the book, that widens the spread too.",
    "The model: Gelman et al., Bayesian Data Analysis, 3rd edition, section 3.3, normal data with unknown mean and variance and a conjugate prior (from memory). Less weight for older jobs: Ibrahim and Chen, Power prior distributions for regression models, Statistical Science 15, 2000 (from memory).",
  ),
  paragraphs(
    "What the two intervals say",
    "Mean rate, from and to: there the rate lies that the office has over many jobs, with the chance that is set (Interval). It becomes narrower with every job.",
    "One job, from and to: there a single next job of good size comes out, with the same chance. It holds the spread between jobs as well, and does not become narrow however many jobs there are. A bid is a single job: its contingency has to bear this one, not that of the mean.",
    "Both use Student's t distribution, which is wider than the normal one where few jobs are known: NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2 (from memory). They rest on the office's own expectations on sheet Rules: where the book's rate is far off, the interval of few jobs holds the true rate less often than it says.",
    "The learned rate is the middle one: half of the jobs are faster, half slower. Slow jobs cost more hours than fast ones save, so that the hours of many jobs come out above those of the middle: with a spread of 30% by some 3 or 4%.",
  ),
  paragraphs(
    "Whole jobs, and whether P80 holds",
    "Sheet Whole jobs holds the man-hours of each job, all compared tasks together, against those by the learned rates: tasks of one job go wrong together, so that its spread is not that of its tasks. The same model as for a rate gives P50 and P80 of the next job. The learned rates know these jobs, so that P80 comes out a little narrow.",
    "A bid does not know the quantities that will be done. So the man-hours of each job are also held against what would be bid for it now: quantities as planned, by the rates as they are marked to be taken. That overrun holds more or less work and work that was forgotten, and is wider. It is what the office book takes (Take the overrun), and a bid under such a book shows its own P50, P80, and the contingency that covers P80.",
    "Sheet Calibration asks the other way round: for each job, what the office book and the jobs before it would have foretold, and whether it stayed within. Right would be 80 of 100 jobs within P80. The share has an interval of its own, by Wilson: a dozen jobs cannot tell 70% from 90%.",
  ),
  paragraphs(
    "Jobs that lie far off",
    "Distance: how many standard deviations a row lies from what all others of its rate say. A row far off is told on sheets Jobs, Between jobs and Checks, with the rate as it would be without it. It stays in. Leave one out only where something happened that will not happen again, and write the reason beside it: rows left out are counted on sheet Between jobs.",
  ),
  paragraphs(
    "Into the office book",
    "Nothing goes into the office book by itself. Put yes under Take it for the rates that the office takes; rillbook learn --take writes a new office book in which those lines alone are changed, each with the jobs and the interval that it comes from.",
    "Built jobs tell the past: the next crew, machine and soil may be others. A rate of fewer than three or so jobs is the book's own, moved a little.",
  ),
];
