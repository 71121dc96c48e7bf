using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Reports.Sheets;

/// <summary>What the document says of each point, and the names of what a point carries.</summary>
internal sealed partial class SheetFacts
{
    private readonly Dictionary<int, List<string>> labels = [];
    private readonly Dictionary<int, List<InputSettings>> settings = [];
    private readonly Dictionary<int, List<MarkedPoint>> marks = [];
    private readonly Dictionary<int, List<SheetUse>> starts = [];
    private readonly Dictionary<int, List<SheetUse>> wanted = [];

    public SheetFacts(ResolvedShow show, SheetView view)
    {
        Show = show;
        Graph = show.Graph;
        View = view;
        foreach (var label in show.Document.Patch.Labels)
        {
            AddRange(labels, label.At, label.Text);
        }

        foreach (var setting in show.Document.Patch.Inputs)
        {
            AddRange(settings, setting.At, setting);
        }

        foreach (var mark in show.Marks)
        {
            for (var i = 0; i < mark.Width; i++)
            {
                Add(marks, mark.First.Value + i, mark);
            }
        }

        AddFeeds();
        AddLines();
    }

    public ResolvedShow Show { get; }

    public SignalGraph Graph { get; }

    public SheetView View { get; }

    public SheetPlace Place(PointIndex point)
    {
        var device = Graph.DeviceOf(point);
        var group = SignalGraph.GroupOf(device, point).Model;
        var number = Graph.NumberOf(point);
        return new SheetPlace
        {
            Device = device.Id,
            DeviceLabel = device.DisplayName,
            Group = group.Id,
            GroupWord = group.Kind is PortKind.Input or PortKind.Output ? new GroupNames(group).One : null,
            Number = number,
            Panel = number <= group.PanelLabels.Count ? group.PanelLabels[number - 1] : null,
            Connector = group.ChannelsPerConnector > 1 ? ((number - 1) / group.ChannelsPerConnector) + 1 : 0,
            ConnectorChannel = group.ChannelsPerConnector > 1 ? ((number - 1) % group.ChannelsPerConnector) + 1 : 0,
        };
    }

    public string? Label(PointIndex point) =>
        labels.TryGetValue(point.Value, out var texts) ? string.Join(" / ", texts.Distinct(StringComparer.Ordinal)) : null;

    public IReadOnlyList<InputSettings> Settings(PointIndex point) => settings.TryGetValue(point.Value, out var found) ? found : [];

    public IReadOnlyList<MarkedPoint> Marks(PointIndex point) => marks.TryGetValue(point.Value, out var found) ? found : [];

    /// <summary>Feeds and lines that start at a point.</summary>
    public IReadOnlyList<SheetUse> Starts(PointIndex point) => starts.TryGetValue(point.Value, out var found) ? found : [];

    /// <summary>Feeds and lines for which the document names the point itself as destination.</summary>
    public IReadOnlyList<SheetUse> Wanted(PointIndex point) => wanted.TryGetValue(point.Value, out var found) ? found : [];

    /// <summary>True when the point is fed, over any number of hops, by the source.</summary>
    public bool IsFedBy(PointIndex point, PointIndex source) => ExistingPlacements.IsFedBy(Graph, point.Value, source.Value);

    /// <summary>The points from a point to what feeds it first, the point itself first; each once, also in a loop.</summary>
    public List<PointIndex> Chain(PointIndex point)
    {
        var chain = new List<PointIndex>();
        for (var at = point; !at.IsNone && chain.Count <= Graph.PointCount; at = Graph.Upstream(at))
        {
            chain.Add(at);
            if (Graph.IsLooping(at))
            {
                break;
            }
        }

        return chain;
    }

    /// <summary>The uses that give a point its name: feeds that ask for it on their way, else the nearest feeds, else the nearest lines.</summary>
    public IReadOnlyList<SheetUse> UsesOf(PointIndex point)
    {
        var passing = new List<SheetUse>();
        IReadOnlyList<SheetUse> nearest = [];
        foreach (var at in Chain(point))
        {
            var here = Starts(at);
            passing.AddRange(here.Where(use => use.Feed is not null && IsOnWay(use, point)));
            nearest = nearest.Count == 0 ? here : nearest;
        }

        if (passing.Count > 0)
        {
            return passing;
        }

        var feeds = nearest.Where(use => use.Feed is not null).ToArray();
        return feeds.Length > 0 ? feeds : nearest;
    }

    /// <summary>True when a demand of the feed is served at, before or behind the point.</summary>
    public bool IsOnWay(SheetUse use, PointIndex point)
    {
        var feed = use.Feed!;
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            var served = Show.Demands[feed.FirstDemand + entry].Existing + use.Position;
            if (!served.IsNone && (IsFedBy(served, point) || IsFedBy(point, served)))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>What a point carries; null when it is silent, also when it hangs on an input that nothing is said of and that no route chose.</summary>
    public SheetSignal? Signal(PointIndex point)
    {
        var origin = Graph.Origin(point);
        var uses = origin.IsNone ? [] : UsesOf(point);
        if (origin.IsNone || (uses.Count == 0 && IsIdleInput(origin) && !Chain(point).Any(at => Graph.Via(at) == HopKind.Route)))
        {
            return null;
        }

        var source = uses.Count > 0 ? uses[0].Start : origin;
        return new SheetSignal
        {
            Names = uses.Select(use => use.Name).Distinct(StringComparer.Ordinal).ToValueList(),
            Roles = uses.Where(use => use.Feed is not null).Select(use => use.Feed!.Model.Role).Distinct().ToValueList(),
            Source = Place(source),
            SourceLabel = Label(source),
        };
    }

    /// <summary>
    /// True for what a point carries when it ends in somebody's ears, whatever the feed is called, or belongs to a feed that is in-ear by its role.
    /// </summary>
    public bool IsInEar(PointIndex point, SheetSignal? signal) => signal?.Roles.Contains(FeedRole.InEar) == true || Show.Ears.Contains(point);

    private bool IsIdleInput(PointIndex origin) => Graph.GroupOf(origin).Kind == PortKind.Input && Label(origin) is null;

    /// <summary>The points where a line enters: the inputs the document names, its source, or where it is placed.</summary>
    public IReadOnlyList<PointIndex> Entries(LineNode line)
    {
        var demand = Show.Demands[line.Demand];
        return demand.IsPinned ? [.. demand.Allowed.Distinct()]
            : demand.Existing.IsNone ? []
            : [demand.Existing];
    }

    /// <summary>True when one position of a line reaches one of its sinks.</summary>
    public bool Reaches(LineNode line, int sink, int position)
    {
        var at = line.Sinks[sink] + position;
        return !at.IsNone && Entries(line).Any(entry => IsFedBy(at, entry + position));
    }

    private void AddFeeds()
    {
        foreach (var feed in Show.Feeds)
        {
            for (var position = 0; position < feed.Width; position++)
            {
                var use = new SheetUse
                {
                    Feed = feed,
                    Position = position,
                    Start = feed.Source + position,
                };
                if (!feed.Source.IsNone)
                {
                    Add(starts, use.Start.Value, use);
                }

                foreach (var to in feed.Model.To)
                {
                    if (to.At is { } at && at.Width == feed.Width && Graph.Find(at, out var first) == ConnectionState.Connected)
                    {
                        Add(wanted, first.Value + position, use);
                    }
                }
            }
        }
    }

    private void AddLines()
    {
        foreach (var line in Show.Lines)
        {
            for (var position = 0; position < line.Width; position++)
            {
                foreach (var entry in Entries(line))
                {
                    Add(
                        starts,
                        entry.Value + position,
                        new SheetUse
                        {
                            Line = line,
                            Position = position,
                            Start = entry + position,
                        }
                    );
                }

                foreach (var sink in line.Sinks.Distinct())
                {
                    if (!sink.IsNone)
                    {
                        Add(
                            wanted,
                            sink.Value + position,
                            new SheetUse
                            {
                                Line = line,
                                Position = position,
                                Start = sink + position,
                            }
                        );
                    }
                }
            }
        }
    }

    private void AddRange<T>(Dictionary<int, List<T>> map, PointRange at, T item)
    {
        if (Graph.Find(at, out var first) == ConnectionState.Connected)
        {
            for (var i = 0; i < at.Width; i++)
            {
                Add(map, first.Value + i, item);
            }
        }
    }

    private static void Add<T>(Dictionary<int, List<T>> map, int point, T item)
    {
        if (!map.TryGetValue(point, out var list))
        {
            map.Add(point, list = []);
        }

        list.Add(item);
    }
}
