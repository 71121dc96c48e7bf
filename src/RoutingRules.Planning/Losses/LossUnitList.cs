using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>Everything that can fail, in the order devices, links, cables, looms, supplies, points, each in the order of the rig.</summary>
internal sealed class LossUnitList
{
    private readonly FailureModel model;
    private readonly ResolvedShow show;

    public LossUnitList(FailureModel model, ValueList<LossKind> kinds)
    {
        this.model = model;
        show = model.Show;
        foreach (var kind in Enum.GetValues<LossKind>())
        {
            if (kinds.IsEmpty ? kind != LossKind.Point : kinds.Contains(kind))
            {
                Add(kind);
            }
        }
    }

    public List<LossUnit> All { get; } = [];

    /// <summary>The unit of each device, by its position in the rig.</summary>
    public Dictionary<int, int> Devices { get; } = [];

    /// <summary>The unit of each link, by its position.</summary>
    public Dictionary<int, int> Links { get; } = [];

    /// <summary>The units that take a cable along, by its position.</summary>
    public Dictionary<int, List<int>> Cables { get; } = [];

    /// <summary>The unit of each supply.</summary>
    public Dictionary<Id<PowerSource>, int> Powers { get; } = [];

    /// <summary>The unit of each point.</summary>
    public Dictionary<int, int> Points { get; } = [];

    /// <summary>The devices that hang on each supply.</summary>
    public List<List<int>> Hanging { get; } = [];

    /// <summary>The name of a loom: the way without the numbers at its end, such as <c>loom B</c> of <c>loom B 1-2</c>.</summary>
    public static string LoomOf(string way)
    {
        var end = way.Length;
        while (end > 0 && (char.IsAsciiDigit(way[end - 1]) || way[end - 1] is '-' or ','))
        {
            end--;
        }

        return end > 0 && end < way.Length && way[end - 1] == ' ' ? way[..end].TrimEnd() : way;
    }

    private void Add(LossKind kind)
    {
        switch (kind)
        {
            case LossKind.Device:
                foreach (var device in show.Devices)
                {
                    Devices.Add(device.Index, All.Count);
                    All.Add(
                        new LossUnit
                        {
                            Thing = new LostThing
                            {
                                Kind = kind,
                                Id = device.Id.Value,
                                Label = device.Model.Label,
                            },
                            Index = device.Index,
                        }
                    );
                }

                break;
            case LossKind.Link:
                foreach (var link in show.Links.Where(link => link.State == ConnectionState.Connected))
                {
                    Links.Add(link.Index, All.Count);
                    All.Add(
                        new LossUnit
                        {
                            Thing = new LostThing { Kind = kind, Id = link.Model.Id.Value },
                            Index = link.Index,
                        }
                    );
                }

                break;
            case LossKind.Cable:
                foreach (var cable in show.Cables.Where(cable => cable.State == ConnectionState.Connected))
                {
                    AddCables(kind, $"{cable.Model.From} to {cable.Model.To}", [cable.Index]);
                }

                break;
            case LossKind.Way:
                AddLooms();
                break;
            case LossKind.Power:
                AddPower();
                break;
            default:
                AddPoints();
                break;
        }
    }

    private void AddCables(LossKind kind, string id, int[] cables)
    {
        foreach (var cable in cables)
        {
            if (!Cables.TryGetValue(cable, out var units))
            {
                Cables.Add(cable, units = []);
            }

            units.Add(All.Count);
        }

        All.Add(
            new LossUnit
            {
                Thing = new LostThing { Kind = kind, Id = id },
                Cables = cables,
            }
        );
    }

    private void AddLooms()
    {
        var looms = new List<(string Loom, Id<Device> From, List<int> Cables)>();
        foreach (var cable in show.Cables)
        {
            if (cable.State != ConnectionState.Connected || cable.Model.Way is not { } way)
            {
                continue;
            }

            var at = looms.FindIndex(loom => loom.Loom == LoomOf(way) && loom.From == cable.Model.From.Device);
            if (at < 0)
            {
                at = looms.Count;
                looms.Add((LoomOf(way), cable.Model.From.Device, []));
            }

            looms[at].Cables.Add(cable.Index);
        }

        foreach (var (loom, from, cables) in looms)
        {
            if (cables.Count > 1)
            {
                AddCables(LossKind.Way, $"{loom} at {from}", [.. cables]);
            }
        }
    }

    private void AddPower()
    {
        foreach (var device in show.Devices)
        {
            foreach (var power in device.Model.Power)
            {
                if (Powers.TryAdd(power, All.Count))
                {
                    All.Add(
                        new LossUnit
                        {
                            Thing = new LostThing { Kind = LossKind.Power, Id = power.Value },
                            Index = Hanging.Count,
                        }
                    );
                    Hanging.Add([]);
                }

                Hanging[All[Powers[power]].Index].Add(device.Index);
            }
        }
    }

    private void AddPoints()
    {
        var points = new SortedSet<int>();
        foreach (var end in model.Deliveries.SelectMany(delivery => delivery.Ends))
        {
            foreach (var at in show.Graph.Upward(new PointIndex(end)))
            {
                if (show.Graph.GroupOf(at).Kind is PortKind.Input or PortKind.Output)
                {
                    points.Add(at.Value);
                }
            }
        }

        foreach (var point in points)
        {
            Points.Add(point, All.Count);
            All.Add(
                new LossUnit
                {
                    Thing = new LostThing
                    {
                        Kind = LossKind.Point,
                        Id = string.Create(CultureInfo.InvariantCulture, $"{show.Graph.Address(new PointIndex(point))}"),
                    },
                    Index = point,
                }
            );
        }
    }
}
