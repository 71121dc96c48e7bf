using RoutingRules.Model;
using RoutingRules.Planning.Comparing;
using RoutingRules.Signal;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Finds the routes, streams, gain owners and labels that have to be loaded.</summary>
internal sealed class PatchMoves(ShowSide before, ShowSide after, Pace pace)
{
    private readonly Show old = before.Show.Document;
    private readonly Show now = after.Show.Document;

    /// <summary>The loads, senders before receivers, what starts before what stops.</summary>
    public List<PlannedMove> Loads() => [.. Starts(), .. Routes(), .. Receivers(), .. Stops(), .. Gains()];

    public IEnumerable<PlannedMove> Labels()
    {
        var oldLabels = LabelsOf(old);
        var newLabels = LabelsOf(now);
        var changed = newLabels
            .Where(pair => oldLabels.GetValueOrDefault(pair.Key) != pair.Value)
            .Select(pair => pair.Key)
            .Concat(oldLabels.Keys.Where(at => !newLabels.ContainsKey(at)));
        foreach (var device in changed.GroupBy(at => at.Device).OrderBy(group => OrderOf(group.Key)))
        {
            var id = device.Key;
            var sorted = device.OrderBy(at => at.Group.Value, StringComparer.Ordinal).ThenBy(at => at.Number).ToList();
            var points = Runs.Of(sorted);
            yield return new PlannedMove
            {
                Phase = ChangeoverPhase.Labels,
                IsLoad = true,
                Place = id,
                Text = $"Load the labels of {Runs.Text(points)}.",
                Details = Texts(sorted, newLabels),
                Points = points,
                Seconds = pace.SecondsToLoad,
                Apply = show =>
                    show with
                    {
                        Patch = show.Patch with
                        {
                            Labels = show
                                .Patch.Labels.Where(label => label.At.Device != id)
                                .Concat(now.Patch.Labels.Where(label => label.At.Device == id))
                                .ToValueList(),
                        },
                    },
            };
        }
    }

    /// <summary>Each label to write, with the points that show it.</summary>
    private static ValueList<string> Texts(IEnumerable<Point> points, Dictionary<Point, string> labels) =>
        Runs.Chains(points.Select(at => (At: at, Text: labels.GetValueOrDefault(at))), (x, y) => Runs.Follow(x.At, y.At) && x.Text == y.Text)
            .Select(chain => $"{Runs.Of(chain.Select(entry => entry.At))[0]}: {chain[0].Text ?? "(empty)"}")
            .ToValueList();

    private IEnumerable<PlannedMove> Routes()
    {
        var oldRoutes = RouteMap.Of(old);
        var newRoutes = RouteMap.Of(now);
        var changed = new List<(Point Sink, Point? Source)>();
        foreach (var sink in oldRoutes.Keys.Union(newRoutes.Keys))
        {
            // A point of a device that goes or comes is loaded with the device or goes with it.
            if (!after.Graph.Find(sink).IsNone)
            {
                var was = before.Graph.Find(sink).IsNone ? null : RouteMap.Effective(before.Graph, oldRoutes, sink);
                var becomes = RouteMap.Effective(after.Graph, newRoutes, sink);
                if (was != becomes)
                {
                    changed.Add((sink, becomes));
                }
            }
        }

        var sorted = changed
            .OrderBy(change => OrderOf(change.Sink.Device))
            .ThenBy(change => change.Source is not null)
            .ThenBy(change => after.Graph.Find(change.Sink));
        foreach (var chain in RouteMap.Chains(sorted))
        {
            var route = RouteMap.Join(chain);
            yield return Load(
                route.To.Device,
                route.From is { } from ? $"Route {from} to {route.To}." : ClearText([route.To]),
                [route.To],
                show => chain.Aggregate(show, (state, change) => RouteMap.With(state, change.Sink, newRoutes.TryGetValue(change.Sink, out var source), source))
            ) with
            {
                IsClear = route.From is null,
            };
        }
    }

    /// <summary>Clears that follow one another at one place as one.</summary>
    public static bool TryJoin(PlannedMove first, PlannedMove next, out PlannedMove joined)
    {
        joined = first;
        if (!first.IsClear || !next.IsClear || first.Place != next.Place || first.Phase != next.Phase)
        {
            return false;
        }

        var points = first.Points.Concat(next.Points).ToValueList();
        joined = first with
        {
            Text = ClearText(points),
            Points = points,
            Seconds = first.Seconds + next.Seconds,
            Apply = show => next.Apply(first.Apply(show)),
        };
        return true;
    }

    private static string ClearText(ValueList<PointRange> sinks) => $"Clear {Runs.Text(sinks)}.";

    private IEnumerable<PlannedMove> Starts()
    {
        var running = old.Patch.Streams.Select(KeyOf).ToHashSet();
        foreach (var stream in now.Patch.Streams.Where(stream => running.Add(KeyOf(stream))))
        {
            yield return Load(
                stream.From.Device,
                $"Start the stream {stream.From} on network '{stream.Network}'{Name(stream)}.",
                [stream.From],
                show => Streams(show, show.Patch.Streams.Append(stream with { To = default }))
            );
        }
    }

    private IEnumerable<PlannedMove> Stops()
    {
        var wanted = now.Patch.Streams.Select(KeyOf).ToHashSet();
        foreach (var key in old.Patch.Streams.Select(KeyOf).Distinct().Where(key => !wanted.Contains(key)))
        {
            yield return Load(
                key.From.Device,
                $"Stop the stream {key.From} on network '{key.Network}'.",
                [key.From],
                show => Streams(show, show.Patch.Streams.Where(stream => KeyOf(stream) != key))
            );
        }
    }

    private IEnumerable<PlannedMove> Receivers()
    {
        var had = ReceiversOf(old);
        var has = ReceiversOf(now);
        var come = has.Where(receiver => !had.Contains(receiver)).ToList();
        foreach (var receiver in come)
        {
            var replaced = had.Where(other => !has.Contains(other) && Overlap(other.At, receiver.At))
                .Select(other => other.From)
                .Where(from => from != receiver.From)
                .Distinct()
                .ToList();
            yield return Load(
                receiver.At.Device,
                $"At {receiver.At} receive {Sent(receiver)}{(replaced.Count == 0 ? "" : $" instead of {Runs.Text(replaced)}")}.",
                [receiver.At],
                show =>
                    Streams(
                        show,
                        show.Patch.Streams.Select(stream => Receive(stream, receiver, other => !has.Contains(other) && Overlap(other.At, receiver.At)))
                    )
            );
        }

        var wanted = now.Patch.Streams.Select(KeyOf).ToHashSet();
        foreach (
            var receiver in had.Where(receiver =>
                !has.Contains(receiver) && wanted.Contains((receiver.Network, receiver.From)) && !come.Exists(other => Overlap(other.At, receiver.At))
            )
        )
        {
            yield return Load(
                receiver.At.Device,
                $"At {receiver.At} receive {Sent(receiver)} no more.",
                [receiver.At],
                show => Streams(show, show.Patch.Streams.Select(stream => Receive(stream, null, other => other == receiver)))
            );
        }
    }

    private IEnumerable<PlannedMove> Gains()
    {
        var had = InputMap.Owners(old.Patch.Inputs);
        var changed = InputMap
            .Owners(now.Patch.Inputs)
            .Where(pair => had.GetValueOrDefault(pair.Key) != pair.Value)
            .Where(pair => !after.Graph.Find(pair.Key).IsNone)
            .OrderBy(pair => after.Graph.Find(pair.Key));
        foreach (var chain in Runs.Chains(changed, (x, y) => Runs.Follow(x.Key, y.Key) && x.Value == y.Value))
        {
            var points = Runs.Of(chain.Select(pair => pair.Key));
            yield return Load(
                chain[0].Value,
                $"Take over the gain of {Runs.Text(points)}.",
                points,
                show => chain.Aggregate(show, (state, pair) => InputMap.With(state, pair.Key, input => input with { GainOwner = pair.Value }))
            ) with
            {
                Hazards = ["The other console follows with its trim only from now on; tell its operator."],
                Plugs = chain.Select(pair => pair.Key).ToValueList(),
            };
        }
    }

    private PlannedMove Load(Id<Device> place, string text, ValueList<PointRange> points, Func<Show, Show> apply) =>
        new()
        {
            Phase = ChangeoverPhase.Patch,
            IsLoad = true,
            Place = place,
            Text = text,
            Points = points,
            Seconds = pace.SecondsToLoad,
            Apply = apply,
        };

    private static AudioStream Receive(AudioStream stream, Receiver? come, Func<Receiver, bool> goes)
    {
        var stay = stream.To.Where(to => !goes(new Receiver(stream.Network, stream.From, to.At, to.Channels)));
        return stream with
        {
            To = (
                come is { } some && (stream.Network, stream.From) == (some.Network, some.From)
                    ? stay.Append(new StreamReceiver { At = some.At, Channels = some.Channels })
                    : stay
            ).ToValueList(),
        };
    }

    private static HashSet<Receiver> ReceiversOf(Show show) =>
        [.. show.Patch.Streams.SelectMany(stream => stream.To.Select(to => new Receiver(stream.Network, stream.From, to.At, to.Channels)))];

    private static Dictionary<Point, string> LabelsOf(Show show)
    {
        var labels = new Dictionary<Point, string>();
        foreach (var label in show.Patch.Labels)
        {
            for (var i = 0; i < label.At.Width; i++)
            {
                labels.TryAdd(label.At[i], label.Text);
            }
        }

        return labels;
    }

    private static string Sent(Receiver receiver) => receiver.Channels is { } channels ? $"{receiver.From} (channels {channels})" : $"{receiver.From}";

    private static string Name(AudioStream stream) => $", '{stream.Label ?? stream.Id.Value}'";

    private static bool Overlap(PointRange x, PointRange y) => x.Device == y.Device && x.Group == y.Group && x.First <= y.Last && y.First <= x.Last;

    private static (Id<Network> Network, PointRange From) KeyOf(AudioStream stream) => (stream.Network, stream.From);

    private static Show Streams(Show show, IEnumerable<AudioStream> streams) => show with { Patch = show.Patch with { Streams = streams.ToValueList() } };

    private int OrderOf(Id<Device> id) => after.Graph.Device(id)?.Index ?? int.MaxValue;

    private readonly record struct Receiver(Id<Network> Network, PointRange From, PointRange At, NumberRange? Channels);
}
