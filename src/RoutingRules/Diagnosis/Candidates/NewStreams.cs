using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Streams and receivers that are not there, and ones that are too narrow.</summary>
internal sealed class NewStreams
{
    /// <summary>So many places are tried where a show leaves open at which slots something is received.</summary>
    private const int MostOffsets = 8;

    /// <summary>So many of them are tried as the first of several receivers that share a stream.</summary>
    private const int MostStarts = 4;

    private readonly CandidateSearch search;
    private readonly SignalGraph graph;
    private readonly StreamEdits edits;

    private NewStreams(CandidateSearch search)
    {
        this.search = search;
        graph = search.Graph;
        edits = new StreamEdits(search.Show);
    }

    public static void Add(CandidateSearch search, List<Step> steps)
    {
        var candidates = new NewStreams(search);
        var open = steps.FindAll(step => search.Elements.Claiming(step.At).Count == 0);
        if (open.Count == 0)
        {
            return;
        }

        foreach (var stream in search.Show.Streams)
        {
            if (!stream.From.IsNone)
            {
                candidates.AddReceivers(stream, open);
            }
        }

        candidates.AddStreams(open);
    }

    /// <summary>Receivers of a stream that is there, one for each device and distance of slots.</summary>
    private void AddReceivers(StreamNode stream, List<Step> open)
    {
        var width = stream.Model.From.Width;
        var sent = open.FindAll(step => step.Source >= stream.From && step.Source.Value < stream.From.Value + width);
        foreach (var run in sent.GroupBy(step => (Device: graph.DeviceOf(step.At).Index, Offset: step.At.Value - step.Source.Value)))
        {
            var like = run.First().At;
            var offset = run.Key.Offset;
            var (first, last) = Blocks(run.Min(step => step.At), run.Max(step => step.At));
            first = Math.Max(first, stream.From.Value + offset);
            last = Math.Min(last, stream.From.Value + offset + width - 1);
            Receive(stream, like, first, last, offset, 11);
            Receive(stream, like, stream.From.Value + offset, stream.From.Value + offset + width - 1, offset, 12);
            foreach (var receiver in stream.Receivers)
            {
                if (
                    receiver.State == ConnectionState.Connected
                    && receiver.At.Value - (stream.From.Value + receiver.FirstChannel - 1) == offset
                    && edits.IsSameGroup(receiver.At, like)
                )
                {
                    Widen(stream, receiver, Math.Min(first, receiver.At.Value), Math.Max(last, receiver.At.Value + receiver.Model.At.Width - 1), offset);
                }
            }
        }
    }

    private void Receive(StreamNode stream, PointIndex like, int first, int last, int offset, int cost)
    {
        var channel = first - offset - stream.From.Value + 1;
        if (
            first >= 0
            && last >= first
            && IsFree(first, last)
            && edits.Receiver(null, channel, stream.Model.From.Width, new PointIndex(first), last - first + 1, like) is { } receiver
        )
        {
            var change = new PatchChange();
            edits.Append(change, stream.Index, receiver);
            search.Add(RepairKind.Complete, Hop.Stream, cost, change);
        }
    }

    private void Widen(StreamNode stream, ReceiverNode receiver, int first, int last, int offset)
    {
        var channel = first - offset - stream.From.Value + 1;
        if (edits.Receiver(receiver.Model, channel, stream.Model.From.Width, new PointIndex(first), last - first + 1, receiver.At) is { } after)
        {
            var change = new PatchChange();
            edits.Replace(
                change,
                stream.Index,
                receiver.Index,
                channel == 1 && last - first + 1 == stream.Model.From.Width ? after with { Channels = null } : after
            );
            search.Add(RepairKind.Widen, Hop.Stream, 10, change);
        }
    }

    /// <summary>A stream for transmit slots that none takes, with a receiver for each device and distance of slots.</summary>
    private void AddStreams(List<Step> open)
    {
        var unsent = open.FindAll(step => !search.Show.Streams.Any(stream => Takes(stream, step.Source)));
        foreach (var sender in unsent.GroupBy(step => graph.DeviceOf(step.Source).First(graph.GroupOf(step.Source))))
        {
            var group = graph.GroupOf(sender.Key);
            var usual = Math.Max(
                group.BlockSize,
                search
                    .Show.Streams.Where(stream => !stream.From.IsNone && edits.IsSameGroup(stream.From, sender.Key))
                    .Select(stream => stream.Model.From.Width)
                    .DefaultIfEmpty(0)
                    .Max()
            );
            var span = sender.Max(step => step.Source.Value) - sender.Key.Value + 1;
            var start = (sender.Min(step => step.Source.Value) - sender.Key.Value) / group.BlockSize * group.BlockSize;
            span = (span - start + group.BlockSize - 1) / group.BlockSize * group.BlockSize;
            AddStream(sender.Key + start, Math.Min(span, group.Count - start), [.. sender]);
            foreach (var width in new[] { usual, group.BlockSize }.Where(width => width != span).Distinct())
            {
                foreach (var block in sender.GroupBy(step => (step.Source.Value - sender.Key.Value) / width))
                {
                    AddStream(sender.Key + (block.Key * width), Math.Min(width, group.Count - (block.Key * width)), [.. block]);
                }
            }
        }
    }

    /// <summary>A stream to every device that lacks it, at the likeliest slots of each, and one to each device alone at all likely slots.</summary>
    private void AddStream(PointIndex from, int width, List<Step> steps)
    {
        var together = Enumerable.Range(0, MostStarts).Select(_ => new List<StreamReceiver>()).ToList();
        foreach (var device in steps.GroupBy(step => graph.DeviceOf(step.At).Index).OrderBy(device => device.Key))
        {
            var runs = device
                .GroupBy(step => step.At.Value - step.Source.Value)
                .OrderByDescending(run => run.Select(step => step.Source).Distinct().Count())
                .ThenBy(run => run.Min(step => step.At))
                .Select(run => run.ToList())
                .ToList();
            for (var start = 0; start < MostStarts; start++)
            {
                together[start].AddRange(Apart(from, width, start < runs.Count ? [runs[start], .. runs.Where((_, i) => i != start)] : runs));
            }

            foreach (var run in runs.Take(MostOffsets))
            {
                foreach (var isWhole in (bool[])[false, true])
                {
                    if (ReceiverOf(from, width, run, isWhole) is { } receiver)
                    {
                        Send(from, width, steps, [receiver]);
                    }
                }
            }
        }

        foreach (var all in together.Where(all => all.Count > 1))
        {
            Send(from, width, steps, all);
        }
    }

    /// <summary>Receivers of one device that together take what it lacks, each channel and each slot once.</summary>
    private List<StreamReceiver> Apart(PointIndex from, int width, List<List<Step>> runs)
    {
        var found = new List<StreamReceiver>();
        var sources = new HashSet<PointIndex>();
        var slots = new HashSet<int>();
        foreach (var run in runs)
        {
            if (
                run.Exists(step => !sources.Contains(step.Source))
                && ReceiverOf(from, width, run, false) is { } receiver
                && Enumerable.Range(receiver.At.First, receiver.At.Width).All(slots.Add)
            )
            {
                found.Add(receiver);
                sources.UnionWith(run.Select(step => step.Source));
            }
        }

        return found;
    }

    private StreamReceiver? ReceiverOf(PointIndex from, int width, List<Step> run, bool isWhole)
    {
        var like = run[0].At;
        var offset = run[0].At.Value - run[0].Source.Value;
        var (first, last) = (from.Value + offset, from.Value + offset + width - 1);
        if (!isWhole || first < 0 || !edits.IsRun(new PointIndex(first), width, like))
        {
            (first, last) = Blocks(run.Min(step => step.At), run.Max(step => step.At));
            first = Math.Max(first, from.Value + offset);
            last = Math.Min(last, from.Value + offset + width - 1);
        }

        return first >= 0 && IsFree(first, last)
            ? edits.Receiver(null, first - offset - from.Value + 1, width, new PointIndex(first), last - first + 1, like)
            : null;
    }

    private void Send(PointIndex from, int width, List<Step> steps, List<StreamReceiver> receivers)
    {
        if (NetworkOf(from, steps.FindAll(step => receivers.Exists(to => to.At.Device == graph.DeviceOf(step.At).Id))) is { } network)
        {
            var change = new PatchChange();
            change.Streams.Added.Add(
                new AudioStream
                {
                    Id = FreeId(graph.DeviceOf(from).Id.Value),
                    Network = network,
                    From = graph.Address(from, width),
                    To = receivers.ToValueList(),
                }
            );
            search.Add(RepairKind.Complete, Hop.Stream, 12 + receivers.Count, change);
        }
    }

    /// <summary>The network over which the sender reaches every receiver; the one it sends on already comes first.</summary>
    private Id<Network>? NetworkOf(PointIndex from, List<Step> steps)
    {
        var sender = graph.DeviceOf(from);
        var networks = search.Show.Document.Rig.Networks;
        var usual = search.Show.Streams.FirstOrDefault(stream => !stream.From.IsNone && graph.DeviceOf(stream.From) == sender)?.Model.Network;
        if (usual is { } known && Leads(search.Show.Network.IndexOf(known), sender, steps))
        {
            return known;
        }

        for (var i = 0; i < networks.Count; i++)
        {
            if (Leads(i, sender, steps))
            {
                return networks[i].Id;
            }
        }

        return networks.Count > 0 && search.Show.Document.Rig.Links.IsEmpty ? networks[0].Id : null;
    }

    private bool Leads(int network, DeviceNode sender, List<Step> steps) =>
        network >= 0 && steps.TrueForAll(step => search.Show.Network.Path(network, sender, graph.DeviceOf(step.At)) is not null);

    private Id<AudioStream> FreeId(string sender)
    {
        for (var number = 1; ; number++)
        {
            var id = string.Create(CultureInfo.InvariantCulture, $"{sender}-{number}");
            if (!search.Show.Streams.Any(stream => stream.Model.Id.Value == id))
            {
                return new Id<AudioStream>(id);
            }
        }
    }

    private static bool Takes(StreamNode stream, PointIndex source) =>
        !stream.From.IsNone && source >= stream.From && source.Value < stream.From.Value + stream.Model.From.Width;

    private bool IsFree(int first, int last)
    {
        for (var point = first; point <= last; point++)
        {
            if (search.Elements.Claiming(new PointIndex(point)).Count > 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The whole blocks of a group around some of its points.</summary>
    private (int First, int Last) Blocks(PointIndex first, PointIndex last)
    {
        var group = graph.GroupOf(first);
        var start = graph.DeviceOf(first).First(group).Value;
        var begin = start + ((first.Value - start) / group.BlockSize * group.BlockSize);
        var end = start + (((last.Value - start) / group.BlockSize) + 1) * group.BlockSize - 1;
        return (begin, Math.Min(end, start + group.Count - 1));
    }
}
