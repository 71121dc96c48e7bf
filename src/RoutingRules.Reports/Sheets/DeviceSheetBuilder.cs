using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Flow;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>Makes the sheet of a device.</summary>
internal sealed partial class DeviceSheetBuilder
{
    private readonly SheetFacts facts;
    private readonly SignalGraph graph;
    private readonly SlotSheetBuilder slots;
    private readonly WorkedDevices worked;

    private readonly FlowBuilder flows;

    public DeviceSheetBuilder(SheetFacts facts, FlowBuilder flows)
    {
        this.facts = facts;
        this.flows = flows;
        graph = facts.Graph;
        slots = new SlotSheetBuilder(facts);
        worked = new WorkedDevices(facts);
    }

    public DeviceSheet Build(DeviceNode device) =>
        new()
        {
            Id = device.Id,
            Label = device.DisplayName,
            Type = device.Profile.Name,
            Zone = SheetWords.Zone(device.Zone, facts.View) ?? device.Model.Zone?.Value,
            Power = device.Model.Power.Select(supply => supply.Value).ToValueList(),
            Notes = device.Model.Notes,
            IsOnlyCabled = !worked.Contains(device.Id),
            Outputs = Tables(device, PortKind.Output, Output),
            Inputs = Tables(device, PortKind.Input, Input),
            Channels = Tables(device, PortKind.Sink, Channel),
            Buses = Tables(device, PortKind.Source, Bus),
            Sent = slots.Sent(device),
            Received = slots.Received(device),
            FreeSlots = slots.Free(device),
            Jacks = slots.Jacks(device),
            Flows = flows.Of(device),
        };

    private static ValueList<SheetTable<TRow>> Tables<TRow>(DeviceNode device, PortKind kind, Func<PointIndex, TRow> row) =>
        device
            .Groups.Where(group => group.Kind == kind && group.Count > 0)
            .Select(group => new SheetTable<TRow>
            {
                Group = group.Id,
                Connector = group.Model.Connector?.Value,
                Rows = Enumerable.Range(0, group.Count).Select(i => row(device.First(group) + i)).ToValueList(),
            })
            .ToValueList();

    private SheetOutput Output(PointIndex point)
    {
        var signal = facts.Signal(point);
        var label = facts.Label(point);
        var goesTo = CabledTo(point);
        var marks = MarksOf(point, out var reason);
        var isSaid = label is not null || goesTo.Count > 0 || facts.Wanted(point).Count > 0;
        var isFree = signal is null && !isSaid && marks.Count == 0 && !IsPinned(point) && !graph.IsLooping(point);
        if (!isFree && (facts.IsInEar(point, signal) || LeadsToTransmitter(point)))
        {
            marks.Add(SheetMark.InEar);
        }

        if (IsPinned(point))
        {
            marks.Add(SheetMark.Pinned);
        }

        AddSignalMarks(marks, point, signal is null && isSaid, signal is not null && IsNotAsked(point));
        return new SheetOutput
        {
            At = facts.Place(point),
            Label = label,
            Signal = signal,
            Hops = signal is null ? [] : Hops(point),
            GoesTo = goesTo.ToValueList(),
            Position = Position(point),
            Marks = marks.ToValueList(),
            Reason = reason,
            IsFree = isFree,
        };
    }

    private string? Position(PointIndex point)
    {
        var positions = facts
            .UsesOf(point)
            .Where(use => use.Feed is not null && facts.IsOnWay(use, point))
            .Select(use => use.Feed!.Model.Position)
            .Where(position => !string.IsNullOrEmpty(position))
            .Distinct(StringComparer.Ordinal)
            .ToArray();
        return positions.Length == 0 ? null : string.Join(" / ", positions);
    }

    private void AddSignalMarks(List<SheetMark> marks, PointIndex point, bool isSilent, bool isNotAsked)
    {
        if (graph.IsLooping(point))
        {
            marks.Add(SheetMark.Loop);
        }
        else if (isSilent)
        {
            marks.Add(SheetMark.NoSignal);
        }
        else if (isNotAsked)
        {
            marks.Add(SheetMark.NotAsked);
        }
    }

    private List<SheetMark> MarksOf(PointIndex point, out string? reason)
    {
        var marks = facts.Marks(point);
        var found = new List<SheetMark>();
        if (marks.Any(mark => mark.IsDead))
        {
            found.Add(SheetMark.Dead);
        }

        if (marks.Any(mark => !mark.IsDead))
        {
            found.Add(SheetMark.Reserved);
        }

        var reasons = marks.Where(mark => mark.Reason is not null).Select(mark => mark.Reason!).Distinct(StringComparer.Ordinal).ToArray();
        reason = reasons.Length == 0 ? null : string.Join(" / ", reasons);
        return found;
    }

    /// <summary>True when a feed or line names the point, or names a place behind it that only this point can serve.</summary>
    private bool IsPinned(PointIndex point) =>
        facts.Wanted(point).Any(use => use.Feed is not null) || facts.UsesOf(point).Any(use => use.Feed is not null && IsServedHere(use, point));

    private bool IsServedHere(SheetUse use, PointIndex point)
    {
        for (var entry = 0; entry < use.Feed!.Model.To.Count; entry++)
        {
            var demand = facts.Show.Demands[use.Feed.FirstDemand + entry];
            if (demand.IsPinned && demand.Existing + use.Position == point)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True for a bus that no feed names, and for a feed that is not asked for at, before or behind the point.</summary>
    private bool IsNotAsked(PointIndex point)
    {
        var uses = facts.UsesOf(point);
        return uses.Count == 0
            ? graph.GroupOf(graph.Origin(point)).Kind == PortKind.Source
            : uses.Any(use => use.Feed is not null) && !uses.Any(use => use.Feed is not null && facts.IsOnWay(use, point));
    }

    private bool LeadsToTransmitter(PointIndex point)
    {
        foreach (var next in graph.Fed(point))
        {
            if (graph.Via(new PointIndex(next)) == HopKind.Cable && graph.DeviceOf(new PointIndex(next)).Profile.Kind == DeviceKind.TransmitterRack)
            {
                return true;
            }
        }

        return false;
    }

    private ValueList<SheetHop> Hops(PointIndex point)
    {
        var hops = new List<SheetHop>();
        var source = facts.UsesOf(point) is { Count: > 0 } uses ? uses[0].Start : graph.Origin(point);
        foreach (var at in facts.Chain(point))
        {
            if (at == source)
            {
                break;
            }

            var kind = graph.Via(at);
            if (kind is HopKind.Stream or HopKind.Carrier or HopKind.Cable)
            {
                var stream = kind == HopKind.Stream ? facts.Show.Streams[graph.ViaIndex(at)] : null;
                hops.Add(
                    new SheetHop
                    {
                        Kind = kind,
                        Id = stream?.Model.Id.Value ?? (kind == HopKind.Carrier ? facts.Show.Links[graph.ViaIndex(at)].Model.Id.Value : null),
                        Channel = stream is null ? 0 : graph.Upstream(at).Value - stream.From.Value + 1,
                        At = facts.Place(at),
                        Way = kind == HopKind.Cable ? Way(at) : null,
                    }
                );
            }
        }

        hops.Reverse();
        return hops.ToValueList();
    }
}
