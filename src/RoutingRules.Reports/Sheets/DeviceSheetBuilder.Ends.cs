using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <content>Inputs, channels and buses.</content>
internal sealed partial class DeviceSheetBuilder
{
    private SheetInput Input(PointIndex point)
    {
        var uses = facts.Starts(point).Where(use => use.Line is not null).ToArray();
        var label = facts.Label(point);
        var marks = MarksOf(point, out var reason);
        var isCabled = graph.Via(point) == HopKind.Cable;
        var signal = isCabled ? facts.Signal(point) : null;
        var settings = facts.Settings(point);
        if ((isCabled || uses.Length > 0) && facts.IsInEar(point, signal))
        {
            marks.Add(SheetMark.InEar);
        }

        if (facts.Wanted(point).Any(use => use.Feed is not null))
        {
            marks.Add(SheetMark.Pinned);
        }

        var isFree =
            uses.Length == 0
            && label is null
            && !isCabled
            && marks.Count == 0
            && facts.Wanted(point).Count == 0
            && !settings.Any(setting => setting.Phantom == true);
        AddSignalMarks(marks, point, (isCabled && signal is null) || (!isCabled && facts.Wanted(point).Count > 0), false);
        return new SheetInput
        {
            At = facts.Place(point),
            Label = label,
            Lines = uses.Select(Info).ToValueList(),
            PluggedFrom = isCabled ? new SheetCabled { At = facts.Place(graph.Upstream(point)), Way = Way(point) } : null,
            Signal = signal,
            Phantom = facts.Phantom(point),
            GoesTo = GoesTo(point),
            Missing = uses.SelectMany(facts.Missing).Distinct().Select(facts.Place).ToValueList(),
            GainOwners = settings
                .Where(setting => setting.GainOwner is not null)
                .Select(setting => Name(setting.GainOwner!.Value))
                .Distinct(StringComparer.Ordinal)
                .ToValueList(),
            GainFollowers = settings.SelectMany(setting => setting.GainFollowers).Select(Name).Distinct(StringComparer.Ordinal).ToValueList(),
            Marks = marks.ToValueList(),
            Reason = reason,
            IsFree = isFree,
        };
    }

    private static SheetLineInfo Info(SheetUse use) => LineCheckBuilder.Info(use.Line!, use.Position);

    private string Name(Id<Device> device) => graph.Device(device)?.DisplayName ?? device.Value;

    private ValueList<SheetArrival> GoesTo(PointIndex point)
    {
        var ends = new List<PointIndex>();
        var own = new List<PointIndex>();
        var device = graph.DeviceOf(point);
        foreach (var at in graph.Carrying(point))
        {
            var kind = graph.GroupOf(at).Kind;
            if (kind == PortKind.Sink)
            {
                ends.Add(at);
            }
            else if (kind == PortKind.Output && graph.DeviceOf(at) == device)
            {
                own.Add(at);
            }
        }

        return (ends.Count > 0 ? ends : own).Select(at => new SheetArrival { At = facts.Place(at), Label = facts.Label(at) }).ToValueList();
    }

    private SheetChannel Channel(PointIndex point)
    {
        var signal = facts.Signal(point);
        var label = facts.Label(point);
        var marks = MarksOf(point, out var reason);
        var wanted = facts.Wanted(point);
        var chain = facts.Chain(point);
        var isFree = label is null && marks.Count == 0 && wanted.Count == 0 && signal is null && !graph.IsLooping(point);
        if (signal is not null && facts.Show.Ears.Contains(point))
        {
            marks.Add(SheetMark.InEar);
        }

        AddSignalMarks(marks, point, signal is null && (label is not null || wanted.Count > 0), signal is not null && IsUnexpected(point, wanted));
        var connectors = chain.Where(at => IsConnector(at) || (at == chain[^1] && at != point)).Reverse().ToArray();
        var entry = connectors.FirstOrDefault(at => graph.GroupOf(at).Kind == PortKind.Input && facts.Starts(at).Any(use => use.Line is not null));
        return new SheetChannel
        {
            At = facts.Place(point),
            Label = label,
            Signal = signal,
            Enters = signal is null ? [] : connectors.Select(facts.Place).ToValueList(),
            Phantom = entry.IsNone ? [] : [facts.Phantom(entry)],
            Missing = wanted.Where(use => !Arrives(use, point)).Select(use => use.Name).Distinct(StringComparer.Ordinal).ToValueList(),
            Marks = marks.ToValueList(),
            Reason = reason,
            IsFree = isFree,
        };
    }

    private bool IsConnector(PointIndex point) => graph.GroupOf(point).Kind is PortKind.Input or PortKind.Output;

    private bool Arrives(SheetUse use, PointIndex point) =>
        use.Feed is not null ? facts.IsFedBy(point, use.Start) : facts.Entries(use.Line!).Any(entry => facts.IsFedBy(point, entry + use.Position));

    /// <summary>True when the channel carries something else than what is meant for it, or something that nothing asks for here.</summary>
    private bool IsUnexpected(PointIndex point, IReadOnlyList<SheetUse> wanted) =>
        wanted.Count > 0 ? !wanted.Any(use => Arrives(use, point)) : !facts.UsesOf(point).Any(use => use.Feed is not null && facts.IsOnWay(use, point));

    private SheetBus Bus(PointIndex point)
    {
        var names = facts.Starts(point).Select(use => use.Name).Distinct(StringComparer.Ordinal).ToValueList();
        var label = facts.Label(point);
        var marks = MarksOf(point, out var reason);
        var paths = facts.Paths(point);
        var isFree = names.Count == 0 && label is null && marks.Count == 0 && paths.Count == 0;
        if (facts.Show.Ears.Contains(point) || facts.Starts(point).Any(use => use.Feed?.Model.Role == FeedRole.InEar))
        {
            marks.Add(SheetMark.InEar);
        }

        AddSignalMarks(marks, point, false, names.Count == 0 && paths.Count > 0);
        return new SheetBus
        {
            At = facts.Place(point),
            Label = label,
            Names = names,
            Arrives = paths,
            Marks = marks.ToValueList(),
            Reason = reason,
            IsFree = isFree,
        };
    }

    private List<SheetCabled> CabledTo(PointIndex output)
    {
        var ends = new List<SheetCabled>();
        foreach (var next in graph.Fed(output))
        {
            var end = new PointIndex(next);
            if (graph.Via(end) == HopKind.Cable)
            {
                ends.Add(new SheetCabled { At = facts.Place(end), Way = Way(end) });
            }
        }

        return ends;
    }

    private string? Way(PointIndex input) => facts.Way(input);
}
