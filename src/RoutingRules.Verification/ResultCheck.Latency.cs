using System.Globalization;
using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <content>How late signals arrive.</content>
internal sealed partial class ResultCheck
{
    // Null when a demand arrives in time on the way found, or may be late.
    private string? Late(DemandFacts demand, Chain chain, int end)
    {
        if (facts.Options is { LatencyMilliseconds: null, InEarLatencyMilliseconds: null })
            return null;

        var role = demand.Feed?.Role;
        var limit =
            role == FeedRole.InEar || (role is not null && facts.Ears.Value.Hear(chain.Points[0]))
                ? facts.Options.InEarLatencyMilliseconds ?? facts.Options.LatencyMilliseconds
            : role == FeedRole.Record || role == FeedRole.Broadcast ? null
            : facts.Options.LatencyMilliseconds;
        if (limit is not { } most)
            return null;

        var sum = chain.Points.Take(end + 1).Sum(Stated);
        for (var step = 0; step < end; step++)
            sum += Step(chain, step);

        for (var up = end; up < chain.Steps.Count; up++)
            sum += Stated(chain.Points[up + 1]) + Step(chain, up);

        sum += demand.Feed is null ? 0 : Onward(chain.Points[0], 0);
        return sum <= most + 1e-9 ? null : string.Create(CultureInfo.InvariantCulture, $"it arrives there after {sum:0.###} ms, later than {most:0.###} ms");
    }

    private double Step(Chain chain, int step) =>
        chain.Steps[step].Kind switch
        {
            StepKind.Stream => PacketMilliseconds(result.Patch.Streams[chain.Steps[step].Stream].Network),
            StepKind.Through => Passing(chain.Points[step + 1], chain.Points[step]),
            _ => 0,
        };

    private double PacketMilliseconds(Id<Network> id)
    {
        if (rig.Rig.Networks.FirstOrDefault(network => network.Id == id) is not { } network)
            return 0;

        // Usual packet times: 1 ms of RTP audio, the class intervals of IEEE 802.1Q (from memory).
        var usual =
            network.Transport == Transport.AvtpClassA ? 125
            : network.Transport == Transport.AvtpClassB ? 250
            : network.Transport == Transport.RtpL24 || network.Transport == Transport.RtpL16 ? 1000
            : 0;
        return Math.Max(network.PacketMicroseconds ?? usual, network.PresentationOffsetMicroseconds ?? 0) / 1000.0;
    }

    private double Onward(Point from, int depth)
    {
        var latest = 0.0;
        if (depth > 100)
            return latest;

        foreach (var input in rig.InputsCabledTo(from))
            latest = Math.Max(latest, Stated(input) + Onward(input, depth + 1));

        foreach (var group in rig.Device(from.Device)!.Groups.Where(group => group.ThroughFrom?.Model.Id == from.Group && from.Number <= group.Count))
        {
            var next = group.At(from.Number);
            if (after.Upstream(next) is { Kind: StepKind.Through })
                latest = Math.Max(latest, Passing(from, next) + Stated(next) + Onward(next, depth + 1));
        }

        return latest;
    }

    private double Stated(Point point) =>
        rig.Device(point.Device)?.Profile?.LatencyMilliseconds.FirstOrDefault(entry => entry.Group == point.Group)?.Value ?? 0;

    private double Passing(Point from, Point to) =>
        rig.Device(to.Device)?.Profile?.Through.FirstOrDefault(entry => entry.From == from.Group && entry.To == to.Group)?.LatencyMilliseconds ?? 0;
}
