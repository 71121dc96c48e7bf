using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Changes of streams and their receivers.</summary>
internal sealed class StreamEdits(ResolvedShow show)
{
    private readonly SignalGraph graph = show.Graph;

    /// <summary>The stream as a change has it so far.</summary>
    public AudioStream Stream(PatchChange change, int index) =>
        change.Streams.Replaced.TryGetValue(index, out var changed) ? changed[0] : show.Document.Patch.Streams[index];

    /// <summary>The first transmit slot of a stream.</summary>
    public PointIndex First(int stream) => show.Streams[stream].From;

    public int Width(int stream) => show.Document.Patch.Streams[stream].From.Width;

    /// <summary>Puts a receiver in the place of one of a stream, or null to take it out.</summary>
    public void Replace(PatchChange change, int stream, int receiver, StreamReceiver? after)
    {
        var model = Stream(change, stream);
        var list = new List<StreamReceiver>(model.To);
        if (after is null)
        {
            list.RemoveAt(receiver);
        }
        else
        {
            list[receiver] = after;
        }

        change.Streams.Replaced[stream] = [model with { To = list.ToValueList() }];
    }

    public void Append(PatchChange change, int stream, StreamReceiver after)
    {
        var model = Stream(change, stream);
        change.Streams.Replaced[stream] = [model with { To = [.. model.To, after] }];
    }

    /// <summary>Lets a stream begin at another slot; false when it does not lie in the same group.</summary>
    public bool MoveSource(PatchChange change, int stream, PointIndex first)
    {
        var width = Width(stream);
        if (!IsRun(first, width, First(stream)))
        {
            return false;
        }

        change.Streams.Replaced[stream] = [Stream(change, stream) with { From = graph.Address(first, width) }];
        return true;
    }

    /// <summary>A receiver of some channels of a stream; null when the stream or the group of the slots is too short.</summary>
    /// <param name="like">The receiver as it is; null for a new one.</param>
    /// <param name="first">The first channel, from 1.</param>
    /// <param name="streamWidth">How many channels the stream has.</param>
    /// <param name="at">The first receive slot.</param>
    /// <param name="width">How many.</param>
    /// <param name="group">A point of the group of the receive slots.</param>
    public StreamReceiver? Receiver(StreamReceiver? like, int first, int streamWidth, PointIndex at, int width, PointIndex group)
    {
        if (first < 1 || width < 1 || first + width - 1 > streamWidth || !IsRun(at, width, group))
        {
            return null;
        }

        var run = graph.Address(at, width);
        NumberRange? channels = first == 1 && width == streamWidth && like?.Channels is null ? null : new NumberRange(first, first + width - 1);
        return like is null ? new StreamReceiver { At = run, Channels = channels } : like with { At = run, Channels = channels };
    }

    public bool IsRun(PointIndex first, int width, PointIndex like) =>
        first.Value >= 0 && first.Value + width <= graph.PointCount && IsSameGroup(first, like) && IsSameGroup(first + (width - 1), like);

    public bool IsSameGroup(PointIndex first, PointIndex second) =>
        graph.DeviceOf(first) == graph.DeviceOf(second) && graph.GroupOf(first) == graph.GroupOf(second);
}
