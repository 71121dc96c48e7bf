using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Repairs of what connects nothing because its ends are of unequal width.</summary>
internal static class WidthCandidates
{
    public static void Add(CandidateSearch search)
    {
        foreach (var route in search.Show.Routes)
        {
            if (route.State == ConnectionState.WidthMismatch && route.Model.From is { } from)
            {
                foreach (var (source, sink, kind) in Fits(from, route.Model.To))
                {
                    var change = new PatchChange();
                    change.Routes.Replaced[route.Index] = [route.Model with { From = source, To = sink }];
                    search.Add(kind, Hop.Route, 10, change);
                }
            }
        }

        foreach (var cable in search.Show.Cables)
        {
            foreach (var (source, sink, kind) in cable.State == ConnectionState.WidthMismatch ? Fits(cable.Model.From, cable.Model.To) : [])
            {
                var change = new PatchChange();
                change.Cables.Replaced[cable.Index] = [cable.Model with { From = source, To = sink }];
                search.Add(kind, Hop.Cable, 10, change);
            }
        }

        foreach (var stream in search.Show.Streams)
        {
            AddStream(search, stream);
        }
    }

    private static void AddStream(CandidateSearch search, StreamNode stream)
    {
        var widest = stream.Model.From.Width;
        foreach (var receiver in stream.Receivers)
        {
            if (receiver.State is not (ConnectionState.WidthMismatch or ConnectionState.OutOfRange))
            {
                continue;
            }

            widest = Math.Max(widest, receiver.Model.Channels?.Last ?? receiver.Model.At.Width);
            var width = receiver.Model.Channels?.Width ?? stream.Model.From.Width;
            var change = new PatchChange();
            new StreamEdits(search.Show).Replace(change, stream.Index, receiver.Index, receiver.Model with { At = Wide(receiver.Model.At, width) });
            search.Add(RepairKind.Widen, Hop.Stream, 11, change);
        }

        if (widest != stream.Model.From.Width)
        {
            var change = new PatchChange();
            change.Streams.Replaced[stream.Index] = [stream.Model with { From = Wide(stream.Model.From, widest) }];
            search.Add(RepairKind.Widen, Hop.Stream, 10, change);
        }
    }

    /// <summary>Both ends as wide as the wider one, then as the narrower one.</summary>
    private static IEnumerable<(PointRange From, PointRange To, RepairKind Kind)> Fits(PointRange from, PointRange to)
    {
        var (wide, narrow) = (Math.Max(from.Width, to.Width), Math.Min(from.Width, to.Width));
        yield return (Wide(from, wide), Wide(to, wide), RepairKind.Widen);
        yield return (Wide(from, narrow), Wide(to, narrow), RepairKind.Widen);
    }

    private static PointRange Wide(PointRange run, int width) =>
        new(run.Device, run.Group, run.First, Math.Min(run.First + width - 1, AddressParser.MaxNumber));
}
