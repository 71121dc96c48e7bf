namespace RoutingRules.Assignment.Search.Feeders;

/// <summary>How much of what is worth placing can be placed at most, when each unit is fed by no more devices than it can be.</summary>
/// <remarks>
/// Lagrangian relaxation: that a demand stands in one unit only is not required but priced. For any prices the sum of the prices and of what each unit by
/// itself can earn, over the best choice of its senders, is a bound. All arithmetic is in whole numbers, so a bound is never rounded to the wrong side.
/// </remarks>
internal sealed class FeederBound
{
    /// <summary>Prices count in this part of a unit of worth.</summary>
    public const long Scale = 1 << 16;

    private const int Patience = 20;
    private const int IndexBits = 20;
    private const long IndexMask = (1 << IndexBits) - 1;

    private readonly FeederProblem problem;
    private readonly long[] worth;
    private readonly int[] taken;
    private readonly long[] ones;
    private readonly long[] twos;
    private readonly int[][][] single;
    private readonly int[][][] paired;
    private readonly List<int> selected = [];
    private readonly List<int> bestSelected = [];
    private readonly int[] chosen;
    private readonly long[][] earned;
    private readonly long[][] bestEarned;
    private long[] prices = [];

    /// <param name="problem">The problem.</param>
    /// <param name="worth">What placing each demand is worth.</param>
    public FeederBound(FeederProblem problem, int[] worth)
    {
        this.problem = problem;
        this.worth = Array.ConvertAll(worth, each => each * Scale);
        taken = new int[problem.Demands.Length];
        chosen = new int[problem.Units.Length];
        earned = Array.ConvertAll(problem.Feedings, sets => new long[sets.Length]);
        bestEarned = Array.ConvertAll(problem.Feedings, sets => new long[sets.Length]);
        ones = new long[worth.Length];
        twos = new long[worth.Length];
        single = Split(1);
        paired = Split(2);

        // Demands that are worth nothing now are left out from the start.
        int[][][] Split(int width) =>
            [
                .. problem.Feedings.Select(
                    (sets, unit) =>
                        sets.Select(
                                (_, set) =>
                                    problem
                                        .Units[unit]
                                        .Widths.Where(entry => entry.Value == width && worth[entry.Key] > 0 && problem.MayFeed(unit, set, entry.Key))
                                        .Select(entry => entry.Key)
                                        .ToArray()
                            )
                            .ToArray()
                ),
            ];
    }

    /// <summary>Steps done, about as long as trying one place each.</summary>
    public long Work { get; private set; }

    /// <summary>The smallest bound found.</summary>
    /// <param name="node">
    /// Which set of senders feeds each unit, by position; -1 for undecided. Its prices are where the search for better ones begins and ends.
    /// </param>
    /// <param name="target">A worth that is known to be possible; the search ends when the bound comes down to it.</param>
    /// <param name="rounds">How often prices may be changed.</param>
    public long Find(FeederNode node, long target, int rounds)
    {
        prices = node.Prices;
        var bestPrices = (long[])prices.Clone();
        var best = long.MaxValue;
        var (stale, divisor) = (0, 1L);
        for (var round = 0; round < rounds; round++)
        {
            var bound = Price(node.Decided);
            if (bound < best)
            {
                (best, stale) = (bound, 0);
                prices.CopyTo(bestPrices, 0);
                chosen.CopyTo(node.Chosen, 0);
                for (var unit = 0; unit < earned.Length; unit++)
                {
                    earned[unit].CopyTo(bestEarned[unit], 0);
                }
            }
            else if (++stale >= Patience)
            {
                (stale, divisor) = (0, divisor * 2);
                bestPrices.CopyTo(prices, 0);
                continue;
            }

            if (best / Scale <= target || !Move(bound - (target * Scale), divisor))
            {
                break;
            }
        }

        bestPrices.CopyTo(node.Prices, 0);
        Settle(node, best, target);
        return best / Scale;
    }

    /// <summary>The open unit for which its two best sets earn most alike at the prices of the last bound; -1 when none is open.</summary>
    public int MostDoubtful(int[] decided)
    {
        var (picked, least) = (-1, long.MaxValue);
        for (var unit = 0; unit < decided.Length; unit++)
        {
            if (decided[unit] >= 0)
            {
                continue;
            }

            var (first, second) = (long.MinValue, long.MinValue);
            foreach (var each in bestEarned[unit])
            {
                (first, second) = each > first ? (each, first) : (first, Math.Max(second, each));
            }

            if (first - second < least)
            {
                (picked, least) = (unit, first - second);
            }
        }

        return picked;
    }

    /// <summary>Decides open units of which all sets but one cannot lead above the target any more.</summary>
    private void Settle(FeederNode node, long bound, long target)
    {
        for (var unit = 0; unit < node.Decided.Length; unit++)
        {
            if (node.Decided[unit] < 0)
            {
                var chosenHere = node.Chosen[unit];
                var spare = bound - ((target + 1) * Scale);
                var others = 0;
                for (var set = 0; set < bestEarned[unit].Length; set++)
                {
                    others += set != chosenHere && bestEarned[unit][chosenHere] - bestEarned[unit][set] <= spare ? 1 : 0;
                }

                node.Decided[unit] = others == 0 ? chosenHere : -1;
            }
        }
    }

    private long Price(int[] decided)
    {
        Array.Clear(taken);
        var sum = 0L;
        foreach (var price in prices)
        {
            sum += price;
        }

        for (var unit = 0; unit < problem.Units.Length; unit++)
        {
            var best = -1L;
            for (var set = 0; set < problem.Feedings[unit].Length; set++)
            {
                if (decided[unit] >= 0 && decided[unit] != set)
                {
                    continue;
                }

                earned[unit][set] = Fill(unit, set);
                if (earned[unit][set] > best)
                {
                    best = earned[unit][set];
                    chosen[unit] = set;
                    bestSelected.Clear();
                    bestSelected.AddRange(selected);
                }
            }

            sum += best;
            bestSelected.ForEach(at => taken[at]++);
        }

        return sum;
    }

    /// <summary>The most a unit can earn with these senders, by whole demands of one or two points.</summary>
    private long Fill(int unit, int set)
    {
        var room = problem.Units[unit].Points.Count;
        selected.Clear();
        var pairs = Best(paired[unit][set], twos, room / 2);
        var singles = Best(single[unit][set], ones, room);
        var sum = 0L;
        for (var i = 0; i < singles; i++)
        {
            sum += ones[i] >> IndexBits;
        }

        var (best, bestPairs, bestSingles) = (sum, 0, singles);
        for (var pair = 1; pair <= pairs; pair++)
        {
            sum += twos[pair - 1] >> IndexBits;
            while (singles > room - (2 * pair))
            {
                sum -= ones[--singles] >> IndexBits;
            }

            if (sum > best)
            {
                (best, bestPairs, bestSingles) = (sum, pair, singles);
            }
        }

        for (var i = 0; i < bestPairs; i++)
        {
            selected.Add(IndexOf(twos[i]));
        }

        for (var i = 0; i < bestSingles; i++)
        {
            selected.Add(IndexOf(ones[i]));
        }

        return best;
    }

    /// <summary>
    /// Puts what the demands earn, with their positions, into a list, the most first; gives how many of them earn something, or how many there is
    /// room for.
    /// </summary>
    private int Best(int[] demands, long[] into, int room)
    {
        Work += demands.Length;
        var count = 0;
        foreach (var at in demands)
        {
            if (worth[at] - prices[at] is > 0 and var value)
            {
                into[count++] = (value << IndexBits) + IndexMask - at;
            }
        }

        into.AsSpan(0, count).Sort();
        into.AsSpan(0, count).Reverse();
        return Math.Min(count, room);
    }

    private static int IndexOf(long entry) => (int)(IndexMask - (entry & IndexMask));

    /// <summary>Raises the price of what is placed twice and lowers it for what is not placed; false when nothing is either.</summary>
    private bool Move(long gap, long divisor)
    {
        var norm = 0L;
        for (var at = 0; at < prices.Length; at++)
        {
            norm += IsPriced(at) ? (long)(taken[at] - 1) * (taken[at] - 1) : 0;
        }

        if (norm == 0)
        {
            return false;
        }

        var step = Math.Max(1, 2 * gap / norm / divisor);
        for (var at = 0; at < prices.Length; at++)
        {
            if (IsPriced(at))
            {
                prices[at] = Math.Clamp(prices[at] + (step * (taken[at] - 1)), 0, worth[at]);
            }
        }

        return true;
    }

    /// <summary>True for a demand whose price is to change; one with a single unit stands once at most, whatever it costs.</summary>
    private bool IsPriced(int at) => problem.UnitsOf[at].Length > 1 && taken[at] != 1 && (taken[at] > 0 || prices[at] > 0);
}
