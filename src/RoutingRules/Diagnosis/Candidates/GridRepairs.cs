using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Streams and receivers that hold part of a block take the whole of it.</summary>
internal static class GridRepairs
{
    public static IEnumerable<OtherRepair> For(ResolvedShow show, Finding finding)
    {
        if (finding.Rule is not ("RR4001" or "RR4004") || finding.Number(2) is not (var index and >= 0) || index >= show.Streams.Count)
        {
            yield break;
        }

        var stream = show.Streams[index];
        var from = Whole(show, stream.Model.From);
        if (from != stream.Model.From)
        {
            yield return Repair(show, stream, $"Stream '{stream.Model.Id}' sends part of a block only", stream.Model with { From = from });
            var (before, after) = (stream.Model.From, from);
            var to = stream.Model.To.Select(receiver =>
                receiver.Channels is null && Grown(receiver.At, before, after) is { } at ? receiver with { At = at } : receiver
            );
            yield return Repair(
                show,
                stream,
                $"Stream '{stream.Model.Id}' is sent and received as part of a block only",
                stream.Model with
                {
                    From = from,
                    To = to.ToValueList(),
                }
            );
        }

        for (var i = 0; i < stream.Model.To.Count; i++)
        {
            var receiver = stream.Model.To[i];
            var at = Whole(show, receiver.At);
            var channels = receiver.Channels ?? new NumberRange(1, stream.Model.From.Width);
            var first = channels.First - (receiver.At.First - at.First);
            if (at != receiver.At && first >= 1 && first + at.Width - 1 <= stream.Model.From.Width)
            {
                var wide = receiver with { At = at, Channels = at.Width == stream.Model.From.Width ? null : new NumberRange(first, first + at.Width - 1) };
                yield return Repair(
                    show,
                    stream,
                    $"{show.Graph.Device(at.Device)?.DisplayName} receives part of a block of stream '{stream.Model.Id}' only",
                    stream.Model with
                    {
                        To = [.. stream.Model.To.Take(i), wide, .. stream.Model.To.Skip(i + 1)],
                    }
                );
            }
        }
    }

    private static OtherRepair Repair(ResolvedShow show, StreamNode stream, string title, AudioStream after) =>
        new(
            title,
            Fix.Of(
                $"Let stream '{stream.Model.Id}' go from {after.From} to {string.Join(", ", after.To.Select(CauseWords.Text))}",
                FixSafety.Unsafe,
                [ShowEdit.Replace(ShowLists.Streams, stream.Index, show.Document.Patch.Streams[stream.Index], after)],
                CauseWords.Caution
            )
        );

    /// <summary>The whole blocks around a run; the run itself where there is no room for them.</summary>
    private static PointRange Whole(ResolvedShow show, PointRange run)
    {
        if (show.Graph.Find(run, out var first) != ConnectionState.Connected)
        {
            return run;
        }

        var size = show.Graph.GroupOf(first).BlockSize;
        var begin = ((run.First - 1) / size * size) + 1;
        var end = (run.Last + size - 1) / size * size;
        return end > show.Graph.GroupOf(first).Count ? run : new PointRange(run.Device, run.Group, begin, end);
    }

    private static PointRange? Grown(PointRange run, PointRange before, PointRange after) =>
        run.First - (before.First - after.First) is var first and >= 1
            ? new PointRange(run.Device, run.Group, first, run.Last + (after.Last - before.Last))
            : null;
}
