using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Search.Feeders;

/// <summary>Which device feeds what, laid out for feeds: units of points, and for each feed where it could stand.</summary>
/// <remarks>
/// Every placement of the part is one of this problem, which knows only points, units and senders; so nothing can be placed that does not fit here.
/// </remarks>
internal sealed class FeederProblem
{
    private readonly AssignmentProblem problem;
    private readonly Part part;
    private readonly List<FeederUnit> units = [];
    private readonly Dictionary<(bool IsFixed, int Number), int> unitOf = [];
    private int[][] widths = [];

    private FeederProblem(AssignmentProblem problem, Part part)
    {
        this.problem = problem;
        this.part = part;
        var blocksOf = new int[problem.DeviceCount];
        foreach (var block in problem.ReceiveBlocks)
        {
            blocksOf[block.Device]++;
        }

        Demands = Array.FindAll(part.Active, index => IsFed(index));
        SenderOf = new int[Demands.Length];
        UnitsOf = new int[Demands.Length][];
        for (var at = 0; at < Demands.Length; at++)
        {
            var demand = problem.Demands[Demands[at]];
            SenderOf[at] = demand.Candidates[part.Choices[Demands[at]][0]].Deliveries[0].Sender;
            var here = new SortedSet<int>();
            foreach (var choice in part.Choices[Demands[at]])
            {
                here.UnionWith(Enter(at, demand.Candidates[choice], blocksOf));
            }

            UnitsOf[at] = [.. here];
        }

        Units = [.. units];
    }

    /// <summary>The problem of a part; null when every unit can be fed by all that want to, so that there is nothing to decide.</summary>
    public static FeederProblem? Of(AssignmentProblem problem, Part part)
    {
        var found = new FeederProblem(problem, part);
        if (!Array.Exists(found.Units, unit => unit.IsContested))
        {
            return null;
        }

        foreach (var index in part.Active.Except(found.Demands))
        {
            found.Outside[problem.Demands[index].Tier] += problem.Demands[index].LeastFailed(part.Choices[index]);
        }

        found.widths = Array.ConvertAll(
            found.Units,
            unit => Enumerable.Range(0, found.Demands.Length).Select(at => unit.Widths.GetValueOrDefault(at)).ToArray()
        );
        found.Feedings = Array.ConvertAll(found.Units, unit => unit.Feedings());
        return found;
    }

    /// <summary>Positions of the feeds' demands with a place, ascending.</summary>
    public int[] Demands { get; }

    /// <summary>For each of the demands the device it comes from.</summary>
    public int[] SenderOf { get; }

    /// <summary>For each of the demands the units in which it could stand, ascending.</summary>
    public int[][] UnitsOf { get; }

    public FeederUnit[] Units { get; }

    /// <summary>What must fail of all other demands, by tier.</summary>
    public int[] Outside { get; } = new int[ObjectiveNumbers.Tiers];

    /// <summary>For each unit the sets of devices that may feed it; one empty set where all may.</summary>
    public int[][][] Feedings { get; private set; } = [];

    public int TierOf(int at) => problem.Demands[Demands[at]].Tier;

    public int WidthOf(int at) => problem.Demands[Demands[at]].Node.Width;

    /// <summary>Points that a demand takes in a unit at least.</summary>
    public int WidthIn(int unit, int at) => widths[unit][at];

    public bool IsFirm(int at) => part.IsFirm[Demands[at]];

    /// <summary>The choices of the part that keep to the senders of each unit.</summary>
    /// <param name="feeding">Position of the set of devices that feeds each unit.</param>
    public int[][] Restrict(int[] feeding)
    {
        var choices = (int[][])part.Choices.Clone();
        foreach (var (at, index) in Demands.Index())
        {
            if (!part.IsFirm[index])
            {
                choices[index] = Array.FindAll(part.Choices[index], choice => Keeps(at, problem.Demands[index].Candidates[choice], feeding));
            }
        }

        return choices;
    }

    /// <summary>Positions in the part of demands that could stand in a unit, come from a device and have no place under some choices; ascending.</summary>
    public int[] Waiting(int unit, int sender, int[] choices) =>
        [.. Demands.Where((index, at) => choices[index] == Evaluator.Unplaced && SenderOf[at] == sender && UnitsOf[at].Contains(unit))];

    /// <summary>Positions in the part of demands that other devices than one feed in a unit under some choices; ascending.</summary>
    public int[] FedByOthers(int unit, int sender, int[] choices) =>
        [
            .. Demands.Where(
                (index, at) => choices[index] >= 0 && SenderOf[at] != sender && FedUnits(problem.Demands[index].Candidates[choices[index]]).Contains(unit)
            ),
        ];

    /// <summary>For each unit a set that holds the devices that feed it under some choices; the first where nothing is placed.</summary>
    public int[] FeedingOf(int[] choices)
    {
        var used = Array.ConvertAll(Units, _ => new HashSet<int>());
        foreach (var (at, index) in Demands.Index())
        {
            if (choices[index] >= 0)
            {
                foreach (var unit in FedUnits(problem.Demands[index].Candidates[choices[index]]))
                {
                    used[unit].Add(SenderOf[at]);
                }
            }
        }

        return [.. used.Select((senders, unit) => Math.Max(0, Array.FindIndex(Feedings[unit], set => set.Length == 0 || senders.IsSubsetOf(set))))];
    }

    /// <summary>How many of the demands some choices leave out, by tier.</summary>
    public int[] LostOf(int[] choices)
    {
        var lost = new int[ObjectiveNumbers.Tiers];
        foreach (var (at, index) in Demands.Index())
        {
            lost[TierOf(at)] += choices[index] < 0 ? 1 : 0;
        }

        return lost;
    }

    /// <summary>True when a demand may stand in a unit that a set of devices feeds.</summary>
    public bool MayFeed(int unit, int feeding, int at) =>
        Feedings[unit][feeding] is var senders && (senders.Length == 0 || Units[unit].Locals.Contains(at) || Array.IndexOf(senders, SenderOf[at]) >= 0);

    private bool Keeps(int at, Candidate candidate, int[] feeding)
    {
        foreach (var unit in FedUnits(candidate))
        {
            if (!MayFeed(unit, feeding[unit], at))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The units in which a place has to be fed from elsewhere.</summary>
    private IEnumerable<int> FedUnits(Candidate candidate)
    {
        var delivery = candidate.Deliveries[0];
        for (var position = 0; position < delivery.Width && !delivery.IsLocal; position++)
        {
            yield return unitOf[KeyOf(candidate, delivery.Sink + position)];
        }
    }

    private bool IsFed(int index)
    {
        var demand = problem.Demands[index];
        return demand.Node.Line is null
            && part.Choices[index].Length > 0
            && Array.TrueForAll(part.Choices[index], choice => demand.Candidates[choice].Deliveries.Length == 1);
    }

    /// <summary>Notes a place of a demand, and gives the units it stands in.</summary>
    private IEnumerable<int> Enter(int at, Candidate candidate, int[] blocksOf)
    {
        var delivery = candidate.Deliveries[0];
        var taken = new Dictionary<int, int>();
        for (var position = 0; position < delivery.Width; position++)
        {
            var key = KeyOf(candidate, delivery.Sink + position);
            if (!unitOf.TryGetValue(key, out var unit))
            {
                unit = units.Count;
                unitOf.Add(key, unit);
                units.Add(new FeederUnit { Limit = key.IsFixed ? 1 : blocksOf[candidate.Device] });
            }

            units[unit].Points.Add(candidate.First + position);
            taken[unit] = taken.GetValueOrDefault(unit) + 1;
            if (delivery.IsLocal)
            {
                units[unit].Locals.Add(at);
            }
            else
            {
                units[unit].Senders.Add(delivery.Sender);
            }
        }

        // A pair across two units takes at least one point of either; in which of them it is said to stand does not matter for a bound.
        foreach (var (unit, width) in taken)
        {
            units[unit].Widths[at] = Math.Min(units[unit].Widths.GetValueOrDefault(at, width), width);
        }

        return taken.Keys;
    }

    private (bool IsFixed, int Number) KeyOf(Candidate candidate, int sink) =>
        problem.FixedBlockOf(sink) is >= 0 and var block ? (true, block) : (false, candidate.PortGroup);
}
