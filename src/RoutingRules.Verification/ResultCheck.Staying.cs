using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <content>Streams and receivers that must stay, and holds.</content>
internal sealed partial class ResultCheck
{
    private void CheckStaying()
    {
        foreach (var old in facts.StayingStreams)
        {
            var now = result.Patch.Streams.FirstOrDefault(stream => stream.Id == old.Id);
            if (now is null || now.From != old.From || now.Network != old.Network || now.Keep != old.Keep)
            {
                Report($"{old.Id} must stay as it is: it is kept, or no demand has to do with its receivers.");
                continue;
            }

            for (var i = 0; i < old.From.Width; i++)
            {
                // What feeds the slot stays; what flows into that, through an insert for instance, may be part of a demand.
                if (Nearest(before, old.From[i]) is var was && Nearest(after, old.From[i]) is var fed && was != fed)
                    Report($"{old.Id} must stay as it is, but {old.From[i]} carries {Name(fed)} instead of {Name(was)}.");
            }

            foreach (var slot in Slots(old).Where(slot => before.Listens(slot)?.From != after.Listens(slot)?.From))
                Report($"{old.Id} must stay as it is, but {slot} no longer takes it.");
        }

        CheckUnmentioned();
    }

    // A receiver no demand speaks of stays in a stream that is sent anyway, exactly while what feeds its slots is what fed them, or nothing. The return of
    // an insert is another feed also while nothing goes into it.
    private void CheckUnmentioned()
    {
        var sent = deliveries.SelectMany(delivery => delivery.Transmit).Select(slot => VectorCount.FirstOfBlock(rig, slot)).ToHashSet();
        foreach (var stream in facts.Input.Patch.Streams.Where(stream => !facts.IsStaying(stream)))
        {
            var goesOn =
                rig.Group(stream.From) is not null
                && sent.Contains(stream.From[0])
                && result.Patch.Streams.Any(now => now.From == stream.From && now.Network == stream.Network);
            foreach (var slot in Slots(stream).Where(slot => !facts.IsMentioned(slot.Device)))
            {
                var part = VectorCount.Block(rig, slot);
                var agrees =
                    goesOn
                    && part.All(taken => before.Listens(taken)?.From is { } heard && (Nearest(after, heard) is not { } fed || fed == Nearest(before, heard)));
                if (agrees && after.Listens(slot)?.From != before.Listens(slot)?.From)
                    Report($"{slot} no longer takes {stream.Id}, whose contents have not changed; leave it in.");
                else if (!agrees && after.Listens(slot)?.From is { } from && from == before.Listens(slot)?.From)
                    Report($"{slot} still takes {stream.Id}, whose contents have changed, though no demand speaks of {slot.Device}.");
            }
        }

        foreach (var (to, from) in after.Listening())
        {
            if (!facts.IsMentioned(to.Device) && !rig.IsExcluded(to.Device) && before.Listens(to)?.From != from)
                Report($"{to} takes a stream that no demand asks for.");
        }
    }

    // The receive slots that listen to a stream of the input, excluded devices apart.
    private IEnumerable<Point> Slots(AudioStream stream) =>
        stream
            .To.Where(receiver => !rig.IsExcluded(receiver.At.Device))
            .SelectMany(receiver => Enumerable.Range(0, receiver.At.Width).Select(i => receiver.At[i]))
            .Where(slot => before.Listens(slot) is { } step && ReferenceEquals(facts.Input.Patch.Streams[step.Stream], stream));

    private bool IsToStay(DemandFacts demand) => demand.IsHeld && !facts.IsForbidden(demand, demand.Existing);

    // A hold may yield only where no patch satisfies every hold. One that does is easy to see when the input itself, freed of all else, is one.
    private void CheckHolds()
    {
        var yielded = facts.Demands.Where(demand => IsToStay(demand) && at[demand.Index] != demand.Existing).ToList();
        if (yielded.Count == 0)
            return;

        var kept = new PointRange?[facts.Demands.Count];
        foreach (
            var demand in facts.Demands.Where(demand => IsToStay(demand) || (demand.IsPinned && demand.Feed is not null && !contradiction.Contains(demand.Key)))
        )
            kept[demand.Index] =
                IsToStay(demand) ? demand.Existing
                : facts.IsPinOutOfUse(demand) || facts.IsForbidden(demand, demand.Runs[0]) ? null
                : demand.Runs[0];

        var proof = new ResultCheck(facts, HeldOnly.Of(facts, kept), kept, contradiction);
        proof.Run(withHolds: false);
        if (proof.Problems.Count > 0)
            return;

        foreach (var demand in yielded)
            Report($"{demand.Key} is held at {demand.Existing} and was moved, though it could have stayed.");
    }
}
