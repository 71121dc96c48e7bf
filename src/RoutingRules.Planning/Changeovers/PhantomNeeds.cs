using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Model;
using RoutingRules.Planning.Comparing;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Signal;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Planning.Changeovers;

/// <summary>What one show says about the phantom power of its inputs, and what its lines need where it says nothing.</summary>
internal sealed class PhantomNeeds
{
    private readonly ShowSide side;
    private readonly Dictionary<Point, List<LineNode>> forbidding = [];
    private readonly Dictionary<Point, List<Point>> entriesOf = [];
    private readonly HashSet<Point> powered = [];

    public PhantomNeeds(ShowSide side)
    {
        this.side = side;
        Said = InputMap.Phantom(side.Show.Document);
        foreach (var line in side.Show.Lines)
        {
            var places = PlugPlaces
                .Of(side.Graph, side.Show.Demands[line.Demand])
                .Where(at => !at.IsNone && side.Graph.GroupOf(at).Kind == PortKind.Input)
                .ToList();
            for (var position = 0; position < line.Width; position++)
            {
                Add(line, [.. places.Select(at => side.Graph.Address(at + position))]);
            }
        }

        foreach (var supplies in Required.Where(supplies => !supplies.Exists(at => Said.GetValueOrDefault(at))))
        {
            powered.UnionWith(supplies.Where(at => !Said.ContainsKey(at)));
        }
    }

    /// <summary>What the document says.</summary>
    public Dictionary<Point, bool> Said { get; }

    /// <summary>For each position of a line that needs phantom power, in document order, the inputs that could supply it.</summary>
    public List<List<Point>> Required { get; } = [];

    /// <summary>All inputs about which the document says something or whose lines do.</summary>
    public IEnumerable<Point> Known => Said.Keys.Concat(entriesOf.Keys);

    /// <summary>True where nothing is said and phantom power has to be on, as the line needs it; of several inputs of a split any may have it.</summary>
    public bool IsPowered(Point supply) => powered.Contains(supply);

    /// <summary>The lines on whose way an input is that must not get phantom power.</summary>
    public IReadOnlyList<LineNode> Forbidding(Point supply) => forbidding.GetValueOrDefault(supply) ?? [];

    /// <summary>Where the lines are plugged in that an input supplies: of a split all legs.</summary>
    public IReadOnlyList<Point> Entries(Point supply) => entriesOf.GetValueOrDefault(supply) ?? [];

    /// <summary>The inputs that could supply what is plugged in at a point.</summary>
    public List<Point> SuppliesAt(Point entry)
    {
        var index = side.Graph.Find(entry);
        List<Point> supplies = index.IsNone ? [] : PhantomPath.Supplies(new GraphWalk(side.Graph), index).ConvertAll(side.Graph.Address);
        if (Said.ContainsKey(entry) && !supplies.Contains(entry))
        {
            supplies.Insert(0, entry);
        }

        return supplies;
    }

    private void Add(LineNode line, List<Point> entries)
    {
        var supplies = entries.SelectMany(SuppliesAt).Distinct().ToList();
        foreach (var supply in supplies)
        {
            if (!entriesOf.TryGetValue(supply, out var known))
            {
                entriesOf.Add(supply, known = []);
            }

            known.AddRange(entries);
            if (line.Model.Phantom == PhantomNeed.Forbidden)
            {
                if (!forbidding.TryGetValue(supply, out var lines))
                {
                    forbidding.Add(supply, lines = []);
                }

                lines.Add(line);
            }
        }

        if (line.Model.Phantom == PhantomNeed.Required && supplies.Count > 0)
        {
            Required.Add(supplies);
        }
    }
}
