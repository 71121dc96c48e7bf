using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Repairs of streams that are there, and of what receives them.</summary>
internal sealed class StreamCandidates
{
    private readonly CandidateSearch search;
    private readonly StreamEdits edits;
    private readonly List<Step> steps;

    private StreamCandidates(CandidateSearch search)
    {
        this.search = search;
        edits = new StreamEdits(search.Show);
        steps = search.Steps.Where(step => step.Hop == Hop.Stream).ToList();
    }

    public static void Add(CandidateSearch search)
    {
        var candidates = new StreamCandidates(search);
        if (candidates.steps.Count == 0)
        {
            return;
        }

        foreach (var step in candidates.steps)
        {
            candidates.AddFor(step);
        }

        NewStreams.Add(search, candidates.steps);
    }

    private void AddFor(Step step)
    {
        var claims = search.Elements.Claiming(step.At);
        var sending = Sending(step.Source);
        if (claims is [var element, ..])
        {
            foreach (var stream in sending)
            {
                if (stream == element.Index)
                {
                    OtherChannels(element, stream, step, 10, RepairKind.Repoint);
                }
                else
                {
                    OtherChannels(element, stream, step, 13, RepairKind.Repoint);
                    Exchange(element, stream);
                    ExchangeSources(element, stream);
                }
            }

            var first = edits.First(element.Index);
            var moved = new PatchChange();
            var distance = step.Source.Value - element.SourceOf(step.At).Value;
            if (first.Value + distance >= 0 && edits.MoveSource(moved, element.Index, new PointIndex(first.Value + distance)))
            {
                search.Add(RepairKind.Shift, Hop.Stream, 11, moved, distance);
            }

            if (claims.Count > 1)
            {
                var removed = new PatchChange();
                edits.Replace(removed, element.Index, element.Sub, null);
                search.Add(RepairKind.Remove, Hop.Stream, 10, removed);
            }
        }

        foreach (var other in search.Elements.Feeding(step.Source))
        {
            if (other.Hop == Hop.Stream && other.SinkOf(step.Source) is var sink && sink != step.At && edits.IsSameGroup(sink, step.At))
            {
                Move(other, step.At.Value - sink.Value);
            }
        }
    }

    private List<int> Sending(PointIndex source)
    {
        var found = new List<int>();
        foreach (var stream in search.Show.Streams)
        {
            if (!stream.From.IsNone && source >= stream.From && source.Value < stream.From.Value + stream.Model.From.Width)
            {
                found.Add(stream.Index);
            }
        }

        return found;
    }

    /// <summary>The receiver takes the channels of a stream at which the step finds its source.</summary>
    private void OtherChannels(Element element, int stream, Step step, int cost, RepairKind kind)
    {
        var first = step.Source.Value - edits.First(stream).Value + 1 - (step.At.Value - element.To.Value);
        var model = search.Show.Document.Patch.Streams[element.Index].To[element.Sub];
        if (edits.Receiver(model, first, edits.Width(stream), element.To, element.Width, element.To) is not { } after)
        {
            return;
        }

        var change = new PatchChange();
        if (stream == element.Index)
        {
            edits.Replace(change, stream, element.Sub, after);
        }
        else
        {
            edits.Replace(change, element.Index, element.Sub, null);
            edits.Append(change, stream, after);
        }

        search.Add(kind, Hop.Stream, cost, change, edits.First(stream).Value + first - 1 - element.From.Value);
    }

    /// <summary>Two receivers change their streams.</summary>
    private void Exchange(Element element, int stream)
    {
        var models = search.Show.Document.Patch.Streams;
        var one = models[element.Index].To[element.Sub];
        for (var i = 0; i < models[stream].To.Count; i++)
        {
            var other = models[stream].To[i];
            if (one.At.Width == other.At.Width && search.Show.Streams[stream].Receivers[i].State == ConnectionState.Connected)
            {
                // What each took now stands in the list of the other: the slots stay where they are.
                var swapped = new PatchChange();
                edits.Replace(swapped, element.Index, element.Sub, one with { At = other.At });
                edits.Replace(swapped, stream, i, other with { At = one.At });
                search.Add(RepairKind.Exchange, Hop.Stream, 9, swapped);
            }
        }
    }

    /// <summary>Two streams change the slots that they send.</summary>
    private void ExchangeSources(Element element, int stream)
    {
        var change = new PatchChange();
        if (
            edits.Width(stream) == edits.Width(element.Index)
            && edits.MoveSource(change, element.Index, edits.First(stream))
            && edits.MoveSource(change, stream, edits.First(element.Index))
        )
        {
            search.Add(RepairKind.Exchange, Hop.Stream, 10, change);
        }
    }

    /// <summary>A receiver stands some slots further on.</summary>
    private void Move(Element element, int distance)
    {
        var model = search.Show.Document.Patch.Streams[element.Index];
        var change = new PatchChange();
        if (element.To.Value + distance >= 0 && new PointIndex(element.To.Value + distance) is var at && edits.IsRun(at, element.Width, element.To))
        {
            edits.Replace(change, element.Index, element.Sub, model.To[element.Sub] with { At = search.Graph.Address(at, element.Width) });
            search.Add(RepairKind.Shift, Hop.Stream, 11, change, distance);
        }
    }
}
