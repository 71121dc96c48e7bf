using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <content>What sounds where nothing is placed.</content>
internal sealed partial class ResultCheck
{
    private void CheckOutputs()
    {
        var asked = Brought();
        foreach (var group in rig.Devices.Where(device => !device.IsExcluded).SelectMany(device => device.Groups))
        {
            // An output behind processing, or of a selector, is downstream of a place or a source itself.
            if (group.Kind != PortKind.Output || group.ThroughFrom is not null || group.IsSelect)
                continue;

            foreach (var point in Enumerable.Range(1, group.Count).Select(group.At))
            {
                if (!places.ContainsKey(point) && !asked.Contains(point) && !rig.IsDead(point) && !rig.IsExcluded(point))
                    CheckIdle(point);
            }
        }
    }

    private bool IsLinePlace(Point point) => places.TryGetValue(point, out var there) && there.Line is not null;

    // What hangs on a place, behind a processor for instance, goes on sounding what the place sounds. Beyond a stream the rules about streams hold.
    private void CheckDownstream()
    {
        var asked = facts
            .Demands.SelectMany(demand => demand.Line?.To ?? default)
            .SelectMany(sink => Enumerable.Range(0, sink.Width).Select(i => sink[i]))
            .ToHashSet();
        foreach (
            var group in rig
                .Devices.Where(device => !device.IsExcluded)
                .SelectMany(device => device.Groups)
                .Where(group => group.Kind is PortKind.Output or PortKind.Sink)
        )
        {
            foreach (var point in Enumerable.Range(1, group.Count).Select(group.At).Where(point => !places.ContainsKey(point) && !asked.Contains(point)))
            {
                var up = before.Follow(point);
                if (
                    up
                        .Points.Take(1 + up.Steps.TakeWhile(step => step.Kind != StepKind.Stream).Count())
                        .FirstOrDefault(passed => places.TryGetValue(passed, out var there) && there.Feed is not null)
                        is { Number: > 0 } place
                    && after.Follow(point).IndexOf(place) < 0
                    && !(group.Kind == PortKind.Sink && up.Points.Any(IsLinePlace))
                )
                {
                    Report($"{places[place].Key} stands at {place} and no longer sounds at {point}, which hangs on it; leave the way between them as it was.");
                }
            }
        }
    }

    private void CheckIdle(Point point)
    {
        var now = after.Follow(point);
        var then = before.Follow(point);
        // A demand may need the slot of a multicore that fed it; then the output falls silent, which is listed.
        var lostItsSlot =
            now.Source is null
            && then.Steps.FirstOrDefault(step => step.Kind == StepKind.Carrier) is { Kind: StepKind.Carrier } sent
            && after.Source(sent.From) != then.Source;
        if (then.Source is not null && IsBuiltIn(then) && !rig.IsReserved(point) && !lostItsSlot && !Inside(now).SequenceEqual(Inside(then)))
        {
            Report($"{point} carried {then.Source} by the device's own routing and now carries {Name(now.Source)}, though no demand stands there.");
        }
        else if (now.Source is { } source)
        {
            var isSame = source == then.Source;
            if (
                (isSame && (facts.Options.KeepUnlisted || ComesInStayingStream(now)))
                || (IsBuiltIn(now) && Inside(now).SequenceEqual(Inside(then)))
                || IsDownstream(now)
                || IsForced(now)
            )
                return;

            if (rig.IsReserved(point))
                Report($"{point} is reserved and must be silent, but carries {source}.");
            else
                Report($"{point} carries {source}, which no demand placed there; clear it or give the device another block.");
        }
    }

    // Every point that a line passes on its way to one of its sinks, the sink included.
    private HashSet<Point> Brought() => deliveries.Where(delivery => delivery.Demand.Line is not null).SelectMany(delivery => delivery.Points).ToHashSet();

    // Factory and fixed routes of the device itself and of what is tied to it by a digital multicore, whatever a cable brings to it.
    private static bool IsBuiltIn(Chain chain) =>
        Within(chain).All(step => step.Kind is StepKind.Factory or StepKind.Fixed or StepKind.Through or StepKind.Carrier);

    private static IEnumerable<Point> Inside(Chain chain) => Within(chain).Select(step => step.From);

    private static IEnumerable<TraceStep> Within(Chain chain) => chain.Steps.TakeWhile(step => step.Kind != StepKind.Cable);

    // What a cable or processing brings to a device is judged where it comes from.
    private bool IsDownstream(Chain chain)
    {
        if (chain.Steps.TakeWhile(step => step.Kind != StepKind.Stream).Any(step => step.Kind is StepKind.Cable or StepKind.Through))
            return true;

        for (var i = 1; i < chain.Points.Count; i++)
        {
            if (places.TryGetValue(chain.Points[i], out var demand) && demand.Feed is not null)
                return true;
        }

        return false;
    }

    // What a receiver took already stays with it; one that takes a stream that stays anew chose to.
    private bool ComesInStayingStream(Chain chain)
    {
        for (var i = 0; i < chain.Steps.Count; i++)
        {
            if (
                chain.Steps[i].Kind == StepKind.Stream
                && (
                    (Stays(result.Patch.Streams[chain.Steps[i].Stream]) && before.Listens(chain.Points[i])?.From == chain.Points[i + 1])
                    || !facts.IsMentioned(chain.Points[i].Device)
                )
            )
            {
                return true;
            }
        }

        return false;
    }

    // Nobody can silence a sender or an output whose positions are fixed; the block is there for the sake of a demand.
    private bool IsForced(Chain chain)
    {
        if (chain.Steps.Count < 2 || chain.Steps[1].Kind != StepKind.Stream)
            return false;

        var (output, receive, transmit) = (chain.Points[0], chain.Points[1], chain.Points[2]);
        var block = VectorCount.FirstOfBlock(rig, receive);
        return (rig.Group(output)!.IsRigid || MovesWithPlaced(output, receive))
            && rig.Group(transmit)!.IsRigid
            && deliveries.Any(delivery => delivery.Receive.Any(slot => VectorCount.FirstOfBlock(rig, slot) == block));
    }

    // Where a device routes in blocks, an output takes its slot whenever a neighbour in its block does.
    private bool MovesWithPlaced(Point output, Point receive)
    {
        var group = rig.Group(output)!;
        if (
            group.Device.Profile!.Routing.FirstOrDefault(entry => entry.Mode == RoutingMode.Block && entry.From == receive.Group && entry.To == output.Group)
            is not { } entry
        )
            return false;

        var size = entry.BlockSize ?? 1;
        var first = output.Number - ((output.Number - 1) % size);
        return Enumerable.Range(first, size).Any(number => number <= group.Count && places.ContainsKey(group.At(number)));
    }

    // Where routes move in blocks, neighbours of a named channel come along.
    private static bool IsBlockRouted(DeviceFacts device, Point point) =>
        device.Profile!.Routing.Any(entry => entry.To == point.Group && entry.Mode == RoutingMode.Block && entry.BlockSize > 1);

    // Where a device routes in blocks, a channel cannot be cleared beside one of its block that a line names.
    private bool IsTornOnlyWith(Point point, HashSet<Point> named)
    {
        var group = rig.Group(point)!;
        var size = Nearest(after, point) is { } from
            ? group
                .Device.Profile!.Routing.FirstOrDefault(entry => entry.Mode == RoutingMode.Block && entry.From == from.Group && entry.To == point.Group)
                ?.BlockSize
                ?? 1
            : 1;
        var first = point.Number - ((point.Number - 1) % size);
        return Enumerable.Range(first, size).Any(number => number <= group.Count && named.Contains(group.At(number)));
    }

    private void CheckChannels()
    {
        // What only a line without a place names is nobody's: another line there would be taken for it.
        var (named, placed) = (new HashSet<Point>(places.Keys), new HashSet<Point>(places.Keys));
        foreach (var demand in facts.Demands)
        {
            foreach (var point in (demand.Line?.To ?? default).SelectMany(sink => Enumerable.Range(0, sink.Width).Select(i => sink[i])))
            {
                named.Add(point);
                if (at[demand.Index] is not null)
                    placed.Add(point);
            }
        }

        foreach (var device in rig.Devices.Where(device => !device.IsExcluded))
        {
            foreach (
                var point in device.Groups.Where(group => group.Kind == PortKind.Sink).SelectMany(group => Enumerable.Range(1, group.Count).Select(group.At))
            )
            {
                if (placed.Contains(point))
                    continue;

                var (then, now) = (Nearest(before, point), Nearest(after, point));
                if (device.IsKind(DeviceKind.Console) && LineThrough(point) is { } line && !IsTornOnlyWith(point, placed))
                    Report($"{point} carries {line.Key}, though no line {(named.Contains(point) ? "with a place " : "")}names it; clear it.");
                else if (
                    !named.Contains(point)
                    && then != now
                    && !IsBlockRouted(device, point)
                    && (now is not null || !device.IsKind(DeviceKind.Console) || then is null || LineThrough(then.Value) is null)
                )
                    Report($"{point} took {Name(then)} and now takes {Name(now)}, though nothing names it.");
            }
        }
    }

    private DemandFacts? LineThrough(Point point)
    {
        foreach (var passed in after.Follow(point).Points)
        {
            if (places.TryGetValue(passed, out var demand) && demand.Line is not null)
                return demand;
        }

        return null;
    }

    // A slot of a block that is sent carries what a demand needs, or nothing.
    private void CheckSlots()
    {
        var used = deliveries.SelectMany(delivery => delivery.Transmit).Concat(Brought()).ToHashSet();
        foreach (var stream in result.Patch.Streams)
        {
            if (Stays(stream) || IsOutOfUse(stream) || rig.Group(stream.From) is not { FixedFrom: null } group || IsBlockRouted(group))
                continue;

            // What was there may stay for a receiver nobody asks about, or where unlisted signals are welcome.
            var isLenient = facts.Options.KeepUnlisted || stream.To.Any(receiver => !facts.IsMentioned(receiver.At.Device));
            for (var i = 0; i < stream.From.Width; i++)
            {
                var slot = stream.From[i];
                if (after.Source(slot) is { } source && !used.Contains(slot) && !(isLenient && before.Source(slot) == source))
                    Report($"{slot} sends {source}, which no demand takes from there; clear the slot.");
            }
        }
    }

    // Talkback, click and comms arrive at no slot that leads to loudspeakers, unless it was nobody's choice: a stream that stays, a sender that is fixed.
    private void CheckPrivacy()
    {
        foreach (var (to, from) in after.Listening())
        {
            var stays = before.Listens(to)?.From == from && after.Listens(to) is { } step && Stays(result.Patch.Streams[step.Stream]);
            if (stays || !facts.IsMentioned(to.Device) || rig.IsExcluded(to) || rig.Group(from)!.IsRigid || !facts.Privacy.IsExposed(to))
                continue;

            if (after.Follow(from).Points.FirstOrDefault(facts.Privacy.IsPrivate) is { Number: > 0 } source)
                Report($"{to} leads to loudspeakers and takes {source} from {from}; send it in a slot that does not arrive there.");
        }
    }

    private static bool IsBlockRouted(GroupFacts group) =>
        group.Device.Profile!.Routing.Any(entry => entry.To == group.Model.Id && entry.Mode == RoutingMode.Block);
}
