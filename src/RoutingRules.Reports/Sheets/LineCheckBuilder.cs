using System.Text;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>The list of lines to check, by channel and by walk.</summary>
internal sealed class LineCheckBuilder
{
    private readonly SheetFacts facts;
    private readonly List<(LineNode Line, int Position, LineCheck Row)> rows = [];

    public LineCheckBuilder(SheetFacts facts, SheetSelection selection)
    {
        this.facts = facts;
        foreach (var line in facts.Show.Lines.Where(selection.Concerns))
        {
            for (var position = 0; position < line.Width; position++)
            {
                rows.Add((line, position, Row(line, position)));
            }
        }
    }

    public ValueList<LineCheck> InChannelOrder() =>
        rows.OrderBy(row => FirstChannel(row.Line, row.Position))
            .ThenBy(row => row.Line.Index)
            .ThenBy(row => row.Position)
            .Select(row => row.Row)
            .ToValueList();

    public ValueList<LineCheckStop> InWalkingOrder()
    {
        var stops = new List<(DeviceNode? Device, List<LineCheck> Rows)>();
        foreach (var (line, position, row) in rows.OrderBy(row => Stop(row.Line, row.Position)).ThenBy(row => row.Line.Index).ThenBy(row => row.Position))
        {
            var entry = Entry(line, position);
            var device = entry.IsNone ? null : facts.Graph.DeviceOf(entry);
            if (stops.Count == 0 || stops[^1].Device != device)
            {
                stops.Add((device, []));
            }

            stops[^1].Rows.Add(row);
        }

        return stops
            .Select(stop => new LineCheckStop
            {
                Zone = SheetWords.Zone(stop.Device?.Zone, facts.View),
                DeviceLabel = stop.Device?.DisplayName,
                Spares = Spares(stop.Device),
                Lines = stop.Rows.ToValueList(),
            })
            .ToValueList();
    }

    public static SheetLineInfo Info(LineNode line, int position) =>
        new()
        {
            Id = line.Model.Id,
            Name = SheetWords.Half(line.DisplayName, line.Width, position),
            Phantom = line.Model.Phantom,
            Equipment = line.Model.Equipment,
            Stand = line.Model.Stand,
            Position = line.Model.Position,
            SuppliedBy = line.Model.SuppliedBy,
            Notes = line.Model.Notes,
        };

    private LineCheck Row(LineNode line, int position)
    {
        var entries = facts.Entries(line);
        var ticks = new List<LineTick>();
        var named = new HashSet<PointIndex>();
        for (var sink = 0; sink < line.Sinks.Count; sink++)
        {
            var at = line.Sinks[sink] + position;
            if (!line.Sinks[sink].IsNone && named.Add(at))
            {
                ticks.Add(
                    new LineTick
                    {
                        DeviceLabel = facts.Graph.DeviceOf(at).DisplayName,
                        At = facts.Place(at),
                        Label = facts.Label(at),
                        Arrives = facts.Reaches(line, sink, position),
                    }
                );
            }
        }

        return new LineCheck
        {
            Line = Info(line, position),
            Enters = entries.Select(entry => entry + position).Distinct().Select(facts.Place).ToValueList(),
            Ways = Ways(line, position),
            Spare = Spare(entries, position),
            Phantom = entries.Count > 0 && facts.Graph.GroupOf(entries[0]).Kind == PortKind.Input ? Phantom(entries, position) : null,
            Ticks = ticks.ToValueList(),
        };
    }

    /// <summary>The cables behind the entries, and before them where an entry is the far end of a loom.</summary>
    private ValueList<string> Ways(LineNode line, int position)
    {
        var ways = new List<string>();
        foreach (var sink in line.Sinks)
        {
            foreach (var at in sink.IsNone ? [] : Enumerable.Reverse(facts.Chain(sink + position)))
            {
                if (
                    facts.Graph.Via(at) == HopKind.Cable
                    && facts.Way(at) is { } way
                    && !ways.Contains(way, StringComparer.Ordinal)
                    && facts.Entries(line).Any(entry => at == entry + position || facts.IsFedBy(at, entry + position))
                )
                {
                    ways.Add(way);
                }
            }
        }

        return ways.ToValueList();
    }

    private SheetPlace? Spare(IReadOnlyList<PointIndex> entries, int position) =>
        entries.Count > 0 && facts.Graph.GroupOf(entries[0]).Kind == PortKind.Input && facts.NearestFree(entries[0] + position) is { IsNone: false } spare
            ? facts.Place(spare)
            : null;

    private ValueList<string> Spares(DeviceNode? device)
    {
        var spares = new List<string>();
        foreach (var group in device is null ? [] : device.Groups.Where(group => group.Kind == PortKind.Input))
        {
            var first = device!.First(group);
            var free = SheetWords.Runs(Enumerable.Range(0, group.Count).Where(i => facts.IsFreeInput(first + i)).Select(i => i + 1));
            if (free.Length > 0)
            {
                var text = new StringBuilder();
                new GroupNames(group.Model).Append(text, free);
                spares.Add(text.ToString());
            }
        }

        return spares.ToValueList();
    }

    /// <summary>On when any input of a split supplies it.</summary>
    private SheetPhantom Phantom(IReadOnlyList<PointIndex> entries, int position)
    {
        var phantom = facts.Phantom(entries[0] + position);
        for (var i = 1; i < entries.Count; i++)
        {
            var other = facts.Phantom(entries[i] + position);
            phantom = phantom with
            {
                IsOn = phantom.IsOn == true || other.IsOn == true ? true : phantom.IsOn ?? other.IsOn,
                IsSupplied = phantom.IsSupplied || other.IsSupplied,
            };
        }

        return phantom;
    }

    private (int Device, int Point) FirstChannel(LineNode line, int position)
    {
        var best = (Device: int.MaxValue, Point: int.MaxValue);
        foreach (var sink in line.Sinks)
        {
            if (!sink.IsNone)
            {
                var device = facts.Graph.DeviceOf(sink);
                var rank = device.Profile.Kind == DeviceKind.Console ? device.Index : facts.Show.Devices.Count + device.Index;
                var at = (rank, sink.Value + position);
                best = at.CompareTo(best) < 0 ? at : best;
            }
        }

        return best;
    }

    private PointIndex Entry(LineNode line, int position) => facts.Entries(line) is { Count: > 0 } entries ? entries[0] + position : PointIndex.None;

    /// <summary>Zones by walk, those without after them in list order, then devices and points in rig order; lines that are not placed come last.</summary>
    private (int Walk, int Zone, int Point) Stop(LineNode line, int position)
    {
        var entry = Entry(line, position);
        if (entry.IsNone)
        {
            return (int.MaxValue, int.MaxValue, int.MaxValue);
        }

        var zone = facts.Graph.DeviceOf(entry).Zone;
        var zones = facts.Show.Document.Rig.Zones;
        var index = zones.Count;
        for (var i = 0; zone is not null && i < zones.Count; i++)
        {
            index = ReferenceEquals(zones[i], zone) ? i : index;
        }

        return (zone?.Walk ?? int.MaxValue, index, entry.Value);
    }
}
