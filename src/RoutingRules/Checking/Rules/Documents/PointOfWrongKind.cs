using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Documents;

/// <summary>Reports connections and intentions that name a point which cannot play that part.</summary>
public sealed class PointOfWrongKind : Rule<ResolvedShow>
{
    private const int TwoDevices = 0;
    private const int WrongSink = 1;
    private const int WrongSource = 2;

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR1108",
            Name = "point-of-wrong-kind",
            Title = "Point that cannot be used like this",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks =
                "Routes lead from a source to a sink of the same device, streams from transmit to receive slots that are not a digital "
                + "multicore's, cables from outputs to inputs, also of one device, "
                + "and links between network jacks of two devices; feeds start at something that gives signal and end at something that takes it, "
                + "and so do lines; input settings speak of inputs.",
            Why = "The connection cannot be made in reality, so nothing is connected.",
            Remedy = "Name a point of the right kind: inside a device use a route, between devices a stream or a cable.",
            Source = "AMWA IS-08 v1.0.1, Behaviour (inputs feed outputs); else common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var once = new OnceOnly(context);
        context.LookedAt(PlacesThatName.Connections(context) + context.Feeds.Count + context.Lines.Count + context.InputSettings.Count);
        CheckRoutes(context);
        CheckStreams(context, once);
        foreach (var cable in context.Cables)
        {
            CheckPair(
                context,
                once,
                cable.State,
                "A cable",
                cable.Model.From,
                PortKind.Output,
                cable.Model.To,
                PortKind.Input,
                new Place(cable.Model, "/rig/cables", cable.Index)
            );
        }

        foreach (var link in context.Links)
        {
            CheckPair(
                context,
                once,
                link.State,
                "A link",
                link.Model.From,
                PortKind.Network,
                link.Model.To,
                PortKind.Network,
                new Place(link.Model, "/rig/links", link.Index)
            );
        }

        CheckIntentions(context, once);
        for (var i = 0; i < context.InputSettings.Count; i++)
        {
            var settings = context.InputSettings[i];
            Look(context, once, settings.At, kind => kind == PortKind.Input, "speak of inputs", new Place(settings, "/patch/inputs", i, "/at"));
        }
    }

    private static void CheckRoutes(RuleContext context)
    {
        SinkRuns? faults = null;
        foreach (var route in context.Routes)
        {
            if (route.State is not (ConnectionState.WrongKind or ConnectionState.WrongDevice))
            {
                continue;
            }

            var from = PointIndex.None;
            context.Find(route.Model.To, out var to);
            if (route.Model.From is { } source)
            {
                context.Find(source, out from);
            }

            var sinkFits = context.GroupOf(to).Kind is PortKind.Sink or PortKind.Output or PortKind.Transmit;
            var tag =
                route.State == ConnectionState.WrongDevice ? TwoDevices
                : sinkFits ? WrongSource
                : WrongSink;
            faults ??= new SinkRuns();
            var width = from.IsNone ? route.Model.To.Width : Math.Min(route.Model.To.Width, route.Model.From!.Value.Width);
            for (var position = 0; position < width; position++)
            {
                faults.Add(to + position, from + position, tag, route.Index);
            }
        }

        foreach (var run in faults?.Merge(context) ?? [])
        {
            var to = context.Address(run.Sink, run.Width);
            var from = run.Source.IsNone ? (PointRange?)null : context.Address(run.Source, run.Width);
            var message = run.Tag switch
            {
                TwoDevices => $"{from} and {to} are on two devices, but a route stays inside one. Between devices use a stream or a cable.",
                WrongSource =>
                    $"A route cannot start at {from}: it is {Wording.Kind(context.GroupOf(run.Source).Kind)}, and gives no signal inside the device.",
                _ => $"A route cannot lead to {to}: it is {Wording.Kind(context.GroupOf(run.Sink).Kind)}, and takes no signal inside the device.",
            };
            var place = new Place(context.Routes[run.Order].Model, "/patch/routes", run.Order);
            if (from is null)
            {
                context.Report(message, place.Pointer, Entity.Of("to", to));
            }
            else
            {
                context.Report(message, place.Pointer, Entity.Of("from", from.Value), Entity.Of("to", to));
            }
        }
    }

    private static void CheckStreams(RuleContext context, OnceOnly once)
    {
        foreach (var stream in context.Streams)
        {
            if (stream.State == ConnectionState.WrongKind)
            {
                once.Report(
                    $"Stream '{stream.Model.Id}' starts at {stream.Model.From}, which {Slots(context, stream.Model.From, PortKind.Transmit)}; a "
                        + "stream starts at transmit slots of the network.",
                    new Place(stream.Model, "/patch/streams", stream.Index, "/from").Pointer,
                    Entity.Of("stream", stream.Model.Id),
                    Entity.Of("from", stream.Model.From)
                );
            }

            foreach (var receiver in stream.Receivers)
            {
                if (receiver.State == ConnectionState.WrongKind)
                {
                    once.Report(
                        $"Stream '{stream.Model.Id}' leads to {receiver.Model.At}, which {Slots(context, receiver.Model.At, PortKind.Receive)}; a "
                            + "stream leads to receive slots of the network.",
                        new Place(stream.Model, "/patch/streams", stream.Index, "/to", receiver.Index, "/at").Pointer,
                        Entity.Of("stream", stream.Model.Id),
                        Entity.Of("receiver", receiver.Model.At)
                    );
                }
            }
        }
    }

    private static string Slots(RuleContext context, PointRange at, PortKind wanted)
    {
        context.Find(at, out var first);
        var group = context.GroupOf(first);
        return group.Kind == wanted
            ? $"lives on the digital multicore jack {at.Device}/{group.Model.Carrier}, where the link is the stream"
            : $"is {Wording.Kind(group.Kind)}";
    }

    private static void CheckPair(
        RuleContext context,
        OnceOnly once,
        ConnectionState state,
        string what,
        PointRange from,
        PortKind fromKind,
        PointRange to,
        PortKind toKind,
        in Place place
    )
    {
        if (state is not (ConnectionState.WrongKind or ConnectionState.WrongDevice))
        {
            return;
        }

        context.Find(from, out var fromPoint);
        context.Find(to, out var toPoint);
        var message =
            state == ConnectionState.WrongDevice ? $"{what} leads from one device to another, but {from} and {to} are on the same one."
            : context.GroupOf(fromPoint).Kind != fromKind
                ? $"{what} cannot start at {from}: it is {Wording.Kind(context.GroupOf(fromPoint).Kind)}, not {Wording.Kind(fromKind)}."
            : $"{what} cannot lead to {to}: it is {Wording.Kind(context.GroupOf(toPoint).Kind)}, not {Wording.Kind(toKind)}.";
        once.Report(message, place.Pointer, Entity.Of("from", from), Entity.Of("to", to));
    }

    private static void CheckIntentions(RuleContext context, OnceOnly once)
    {
        foreach (var feed in context.Feeds)
        {
            if (feed.SourceState == ConnectionState.Connected && !GivesSignal(context.GroupOf(feed.Source)))
            {
                Look(
                    context,
                    once,
                    feed.Model.Source,
                    _ => false,
                    "starts at something that gives signal",
                    new Place(feed.Model, "/feeds", feed.Index, "/source")
                );
            }

            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                if (feed.Model.To[entry].At is { } at)
                {
                    Look(
                        context,
                        once,
                        at,
                        TakesSignal,
                        "ends at something that takes signal",
                        new Place(feed.Model, "/feeds", feed.Index, "/to", entry, "/at")
                    );
                }
            }
        }

        foreach (var line in context.Lines)
        {
            var model = line.Model;
            var areInputs = model.From.Source is null && context.Demand(line).Allowed.Count == model.From.At.Count;
            for (var i = 0; !areInputs && i < model.From.At.Count; i++)
            {
                Look(
                    context,
                    once,
                    model.From.At[i],
                    kind => kind == PortKind.Input,
                    "enters at an input",
                    new Place(model, "/lines", line.Index, "/from/at", i)
                );
            }

            if (!line.Source.IsNone && !GivesSignal(context.GroupOf(line.Source)))
            {
                Look(
                    context,
                    once,
                    model.From.Source!.Value,
                    _ => false,
                    "starts at something that gives signal",
                    new Place(model, "/lines", line.Index, "/from/source")
                );
            }

            for (var i = 0; i < model.To.Count; i++)
            {
                if (line.Sinks[i].IsNone || !TakesSignal(context.GroupOf(line.Sinks[i]).Kind))
                {
                    Look(context, once, model.To[i], TakesSignal, "ends at something that takes signal", new Place(model, "/lines", line.Index, "/to", i));
                }
            }
        }
    }

    private static bool GivesSignal(GroupNode group) => group.Kind is PortKind.Source or PortKind.Input or PortKind.Receive || group.IsOrigin;

    private static bool TakesSignal(PortKind kind) => kind is not (PortKind.Source or PortKind.Network);

    private static void Look(RuleContext context, OnceOnly once, PointRange at, Func<PortKind, bool> fits, string part, in Place place)
    {
        if (context.Find(at, out var first) == ConnectionState.Connected && !fits(context.GroupOf(first).Kind))
        {
            var (role, id) = place.Owner switch
            {
                Feed feed => ("feed", feed.Id.Value),
                Line line => ("line", line.Id.Value),
                _ => ("inputs", at.ToString()),
            };
            var name = char.ToUpperInvariant(place.Name[0]) + place.Name[1..];
            once.Report($"{name} {part}, but {at} is {Wording.Kind(context.GroupOf(first).Kind)}.", place.Pointer, Entity.Of(role, id), Entity.Of("at", at));
        }
    }
}
