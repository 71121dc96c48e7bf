using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis;

/// <summary>Says causes and repairs in the words of the trade.</summary>
internal sealed class CauseWords(ResolvedShow show)
{
    public const string Caution = "Turn the outputs concerned down first, in-ear mixes before all, and bring up one at a time at low level.";

    private readonly SignalGraph graph = show.Graph;

    /// <summary>What is wrong.</summary>
    public string Title(RepairCandidate candidate)
    {
        var all = candidate.Solved.Select(want => want.Demand.DisplayName).Distinct(StringComparer.Ordinal).ToList();
        var names = NameRuns.Of(all);
        var several = all.Count > 1;
        var are = several ? "are" : "is";
        var where = Where(candidate);
        return candidate.Kind switch
        {
            RepairKind.Exchange when several => $"{names} are exchanged {where}",
            RepairKind.Exchange when candidate.Solved[0].Width == 2 && candidate.Overlay.Changed.Count == 2 =>
                $"Left and right of {names} are exchanged {where}",
            RepairKind.Exchange => $"{names} is exchanged with another {where}",
            RepairKind.Shift or RepairKind.Repoint when Moved(candidate) is { } moved => $"{names} {are} {moved} {where}",
            RepairKind.Shift or RepairKind.Repoint when Otherwise(candidate) is { } other => $"{other}: {names}",
            RepairKind.Complete => $"{Missing(candidate)} is missing: {names}",
            RepairKind.Widen => $"{Narrow(candidate)} is too narrow for {names}",
            RepairKind.Remove => $"{Removed(candidate)} is in the way of {names}",
            _ => $"{names} {are} fed from the wrong place {where}",
        };
    }

    /// <summary>What to do.</summary>
    public string Repair(RepairCandidate candidate)
    {
        var change = candidate.Change;
        var orders = new List<string>();
        foreach (var (index, after) in change.Routes.Replaced)
        {
            var route = show.Document.Patch.Routes[index];
            orders.Add(Order(route.From is null ? "the clearing of" : "the route from", Text(route), after.Select(Text)));
        }

        foreach (var (index, after) in change.Streams.Replaced)
        {
            orders.Add(Order($"stream '{show.Document.Patch.Streams[index].Id}'", "", after.Select(Text)));
        }

        foreach (var (index, after) in change.Cables.Replaced)
        {
            orders.Add(Order("the cable from", Text(show.Document.Rig.Cables[index]), after.Select(Text)));
        }

        orders.AddRange(change.Routes.Added.Select(route => route.From is null ? $"clear {route.To}" : $"route {Text(route)}"));
        orders.AddRange(change.Streams.Added.Select(stream => $"send {Text(stream)}"));
        orders.AddRange(change.Cables.Added.Select(cable => $"plug {Text(cable)}"));
        var text = Wording.Names(orders, false);
        return $"{char.ToUpperInvariant(text[0])}{text[1..]}";
    }

    /// <summary>The points that the repair feeds otherwise, in runs.</summary>
    public ValueList<Entity> Places(RepairCandidate candidate)
    {
        var runs = new List<(PointIndex First, int Width)>();
        foreach (var point in candidate.Overlay.Changed.Keys.Order().Select(point => new PointIndex(point)))
        {
            if (
                runs.Count > 0
                && runs[^1].First + runs[^1].Width == point
                && graph.DeviceOf(point) == graph.DeviceOf(runs[^1].First)
                && graph.GroupOf(point) == graph.GroupOf(runs[^1].First)
            )
            {
                runs[^1] = (runs[^1].First, runs[^1].Width + 1);
            }
            else
            {
                runs.Add((point, 1));
            }
        }

        return runs.Select(run => Entity.Of("at", graph.Address(run.First, run.Width))).ToValueList();
    }

    private string Where(RepairCandidate candidate)
    {
        var devices = candidate.Overlay.Changed.Keys.Order().Select(point => graph.DeviceOf(new PointIndex(point)).DisplayName).Distinct().ToList();
        var names = Wording.Names(devices, false);
        return candidate.Hop switch
        {
            Hop.Route => $"in the routes of {names}",
            Hop.Cable => $"at the cables to {names}",
            _ => $"at what {names} {(devices.Count == 1 ? "receives" : "receive")}",
        };
    }

    /// <summary>How far a run of routes or cables is off; null when that says nothing.</summary>
    private string? Moved(RepairCandidate candidate)
    {
        if (candidate.Distance == 0 || candidate.Hop == Hop.Stream)
        {
            return null;
        }

        var (isSink, point) = Ends(candidate);
        if (point.IsNone)
        {
            return null;
        }

        var count = Math.Abs(candidate.Distance);
        var unit = graph.GroupOf(point).Kind switch
        {
            PortKind.Source => count == 1 ? "bus" : "buses",
            PortKind.Sink => count == 1 ? "channel" : "channels",
            PortKind.Input => count == 1 ? "input" : "inputs",
            PortKind.Output => count == 1 ? "output" : "outputs",
            _ => count == 1 ? "slot" : "slots",
        };
        var verb =
            candidate.Hop == Hop.Cable ? "plugged"
            : isSink ? "patched"
            : "taken";
        return string.Create(CultureInfo.InvariantCulture, $"{verb} {count} {unit} too {(candidate.Distance < 0 ? "high" : "low")}");
    }

    /// <summary>Which end of the changed elements moves, and a point of its group.</summary>
    private (bool IsSink, PointIndex Point) Ends(RepairCandidate candidate)
    {
        foreach (var (index, after) in candidate.Change.Routes.Replaced)
        {
            var before = show.Document.Patch.Routes[index];
            if (after.Count == 1)
            {
                return before.To != after[0].To ? (true, First(before.To)) : (false, before.From is { } from ? First(from) : PointIndex.None);
            }
        }

        foreach (var (index, after) in candidate.Change.Cables.Replaced)
        {
            var before = show.Document.Rig.Cables[index];
            if (after.Count == 1)
            {
                return before.To != after[0].To ? (true, First(before.To)) : (false, First(before.From));
            }
        }

        return (false, PointIndex.None);
    }

    /// <summary>What a stream or a receiver takes instead of what it should.</summary>
    private string? Otherwise(RepairCandidate candidate)
    {
        var streams = candidate.Change.Streams.Replaced;
        foreach (var (index, after) in streams)
        {
            var before = show.Document.Patch.Streams[index];
            if (after.Count == 1 && before.From != after[0].From)
            {
                return $"Stream '{before.Id}' takes {before.From} instead of {after[0].From.Numbers}";
            }

            for (var i = 0; after.Count == 1 && before.To.Count == after[0].To.Count && i < before.To.Count; i++)
            {
                var (old, now) = (before.To[i], after[0].To[i]);
                if (old.At != now.At)
                {
                    return $"{Device(old.At)} receives stream '{before.Id}' at {old.At} instead of {now.At.Numbers}";
                }

                if (old.Channels != now.Channels)
                {
                    return $"{Device(old.At)} receives {Sent(before, old)} instead of {Sent(before, now).Numbers}";
                }
            }
        }

        foreach (var (index, after) in streams)
        {
            var before = show.Document.Patch.Streams[index];
            if (after.Count == 1 && after[0].To.Count > before.To.Count && streams.Count == 2)
            {
                var other = streams.Keys.First(key => key != index);
                return $"{Device(after[0].To[^1].At)} receives stream '{show.Document.Patch.Streams[other].Id}' instead of '{before.Id}'";
            }
        }

        return null;
    }

    private string Missing(RepairCandidate candidate)
    {
        var change = candidate.Change;
        if (change.Streams.Added is [var stream, ..])
        {
            return $"The stream from {stream.From} to {Wording.Names(stream.To.Select(to => Device(to.At)).Distinct().ToList(), false)}";
        }

        foreach (var (index, after) in change.Streams.Replaced)
        {
            return $"{Device(after[0].To[^1].At)} as a receiver of stream '{show.Document.Patch.Streams[index].Id}'";
        }

        return change.Cables.Added is [var cable, ..] ? $"The cable from {Text(cable)}"
            : change.Routes.Added is [var route, ..] ? $"The route from {Text(route)}"
            : "A connection";
    }

    private string Narrow(RepairCandidate candidate)
    {
        foreach (var index in candidate.Change.Streams.Replaced.Keys)
        {
            return $"Stream '{show.Document.Patch.Streams[index].Id}'";
        }

        foreach (var index in candidate.Change.Cables.Replaced.Keys)
        {
            return $"The cable from {Text(show.Document.Rig.Cables[index])}";
        }

        foreach (var index in candidate.Change.Routes.Replaced.Keys)
        {
            return $"The route from {Text(show.Document.Patch.Routes[index])}";
        }

        return "A connection";
    }

    private string Removed(RepairCandidate candidate)
    {
        foreach (var index in candidate.Change.Streams.Replaced.Keys)
        {
            return $"A receiver of stream '{show.Document.Patch.Streams[index].Id}'";
        }

        return Narrow(candidate);
    }

    private static string Order(string what, string before, IEnumerable<string> after)
    {
        var now = after.ToList();
        var named = before.Length == 0 ? what : $"{what} {before}";
        return now.Count == 0 ? $"take out {named}" : $"change {named} into {Wording.Names(now, false)}";
    }

    private static string Text(Route route) => route.From is { } from ? $"{from} to {route.To}" : route.To.ToString();

    private static string Text(Cable cable) => $"{cable.From} to {cable.To}";

    private static string Text(AudioStream stream) => $"{stream.From} to {Wording.Names(stream.To.Select(Text).ToList(), false)}";

    /// <summary>A receiver with the channels that it takes.</summary>
    public static string Text(StreamReceiver to) => to.Channels is { } channels ? $"{to.At} (channels {channels})" : to.At.ToString();

    private string Device(PointRange at) => graph.Device(at.Device)?.DisplayName ?? at.Device.Value;

    private static PointRange Sent(AudioStream stream, StreamReceiver receiver) =>
        receiver.Channels is { } channels
            ? new PointRange(stream.From.Device, stream.From.Group, stream.From.First + channels.First - 1, stream.From.First + channels.Last - 1)
            : stream.From;

    private PointIndex First(PointRange run) => graph.Find(run, out var first) == ConnectionState.Connected ? first : PointIndex.None;
}
