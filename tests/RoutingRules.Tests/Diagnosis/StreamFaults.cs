using RoutingRules.Model;

namespace RoutingRules.Tests.Diagnosis;

/// <summary>Slips at streams and their receivers.</summary>
internal static class StreamFaults
{
    public static IEnumerable<Fault> All { get; } =
    [
        new("stream: gone", static (show, lot) => AtStream(show, lot, static (_, _) => null)),
        new(
            "stream: starts a block off",
            static (show, lot) => AtStream(show, lot, static (stream, lot) => stream with { From = Moved(stream.From, lot) }, mayFail: true)
        ),
        new("stream: two send each other's block", static (show, lot) => ExchangeSources(show, lot)),
        new(
            "stream: too narrow",
            static (show, lot) =>
                AtStream(
                    show,
                    lot,
                    static (stream, _) => stream.From.Width < 4 ? stream : stream with { From = Planting.Part(stream.From, 0, stream.From.Width / 2) },
                    mayFail: true
                )
        ),
        new("receiver: gone", static (show, lot) => AtReceiver(show, lot, static (_, _, _) => null)),
        new("receiver: a block off", static (show, lot) => AtReceiver(show, lot, static (_, receiver, lot) => receiver with { At = Moved(receiver.At, lot) })),
        new("receiver: the wrong part of a stream", static (show, lot) => AtReceiver(show, lot, static (stream, receiver, _) => OtherPart(stream, receiver))),
        new("receiver: too narrow", static (show, lot) => AtReceiver(show, lot, static (_, receiver, _) => Narrow(receiver))),
        new("receiver: two take each other's stream", static (show, lot) => ExchangeReceivers(show, lot)),
        new("receiver: takes another stream", static (show, lot) => Repoint(show, lot)),
    ];

    private static Show? AtStream(Show show, Lot lot, Func<AudioStream, Lot, AudioStream?> change, bool mayFail = false)
    {
        if (show.Patch.Streams.IsEmpty)
        {
            return null;
        }

        var index = lot.Roll(0, show.Patch.Streams.Count - 1);
        var after = change(show.Patch.Streams[index], lot);
        return mayFail && (after is null || after.Equals(show.Patch.Streams[index]))
            ? null
            : Planting.Streams(
                show,
                [.. show.Patch.Streams.Take(index), .. after is null ? Array.Empty<AudioStream>() : [after], .. show.Patch.Streams.Skip(index + 1)]
            );
    }

    private static Show? AtReceiver(Show show, Lot lot, Func<AudioStream, StreamReceiver, Lot, StreamReceiver?> change) =>
        AtStream(
            show,
            lot,
            (stream, lot) =>
            {
                if (stream.To.IsEmpty)
                {
                    return stream;
                }

                var index = lot.Roll(0, stream.To.Count - 1);
                var after = change(stream, stream.To[index], lot);
                return stream with
                {
                    To = [.. stream.To.Take(index), .. after is null ? Array.Empty<StreamReceiver>() : [after], .. stream.To.Skip(index + 1)],
                };
            },
            mayFail: true
        );

    private static PointRange Moved(PointRange run, Lot lot)
    {
        var width = run.Width;
        var first = run.First > width && lot.Chance(50) ? run.First - width : run.First + width;
        return new PointRange(run.Device, run.Group, first, first + width - 1);
    }

    private static StreamReceiver OtherPart(AudioStream stream, StreamReceiver receiver)
    {
        if (receiver.Channels is not { } channels)
        {
            return receiver;
        }

        var first = channels.Last + channels.Width <= stream.From.Width ? channels.Last + 1 : channels.First - channels.Width;
        return first < 1 ? receiver : receiver with { Channels = new NumberRange(first, first + channels.Width - 1) };
    }

    private static StreamReceiver Narrow(StreamReceiver receiver)
    {
        var half = receiver.At.Width / 2;
        var first = receiver.Channels?.First ?? 1;
        return half == 0 ? receiver : receiver with { At = Planting.Part(receiver.At, 0, half), Channels = new NumberRange(first, first + half - 1) };
    }

    private static Show? ExchangeSources(Show show, Lot lot)
    {
        var streams = show.Patch.Streams;
        var pairs = (
            from one in Enumerable.Range(0, streams.Count)
            from other in Enumerable.Range(one + 1, streams.Count - one - 1)
            where streams[one].From.Device == streams[other].From.Device && streams[one].From.Width == streams[other].From.Width
            select (one, other)
        ).ToList();
        if (pairs.Count == 0)
        {
            return null;
        }

        var (first, second) = lot.Pick(pairs);
        return Planting.Streams(
            show,
            streams.Select(
                (stream, i) =>
                    i == first ? stream with { From = streams[second].From }
                    : i == second ? stream with { From = streams[first].From }
                    : stream
            )
        );
    }

    private static Show? ExchangeReceivers(Show show, Lot lot)
    {
        var pairs = Pairs(show);
        if (pairs.Count == 0)
        {
            return null;
        }

        var streams = show.Patch.Streams;
        var (a, i, b, j) = lot.Pick(pairs);
        var (one, other) = (streams[a].To[i], streams[b].To[j]);
        return Planting.Streams(
            show,
            streams.Select(
                (stream, s) =>
                    s == a ? stream with { To = [.. stream.To.Select((to, r) => r == i ? to with { At = other.At } : to)] }
                    : s == b ? stream with { To = [.. stream.To.Select((to, r) => r == j ? to with { At = one.At } : to)] }
                    : stream
            )
        );
    }

    private static Show? Repoint(Show show, Lot lot)
    {
        var pairs = Pairs(show);
        if (pairs.Count == 0)
        {
            return null;
        }

        var (a, i, b, _) = lot.Pick(pairs);
        var moved = show.Patch.Streams[a].To[i];
        return Planting.Streams(
            show,
            show.Patch.Streams.Select(
                (stream, s) =>
                    s == a ? stream with { To = [.. stream.To.Where((_, r) => r != i)] }
                    : s == b ? stream with { To = [.. stream.To, moved] }
                    : stream
            )
        );
    }

    private static List<(int A, int I, int B, int J)> Pairs(Show show)
    {
        var streams = show.Patch.Streams;
        return (
            from a in Enumerable.Range(0, streams.Count)
            from b in Enumerable.Range(0, streams.Count)
            where a < b && streams[a].From.Width == streams[b].From.Width && streams[a].From.Device == streams[b].From.Device
            from i in Enumerable.Range(0, streams[a].To.Count)
            from j in Enumerable.Range(0, streams[b].To.Count)
            where streams[a].To[i].At.Width == streams[b].To[j].At.Width && streams[a].To[i].At != streams[b].To[j].At
            select (a, i, b, j)
        ).ToList();
    }
}
