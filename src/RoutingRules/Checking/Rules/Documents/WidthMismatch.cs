using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Documents;

/// <summary>Reports runs of points that are joined to runs of another width.</summary>
public sealed class WidthMismatch : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR1104",
            Name = "width-mismatch",
            Title = "Unequal numbers of points",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks =
                "Both ends of a route, a cable and a stream receiver are equally wide; a feed is one or two wide and so are the points it is pinned to; "
                + "a line and its points are equally wide; a network link joins one jack to one jack.",
            Why = "Points are joined one to one in order. With unequal counts nobody can tell which goes where, so nothing is connected.",
            Remedy = "Write as many points on one side as on the other.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var once = new OnceOnly(context);
        context.LookedAt(PlacesThatName.Connections(context) + context.Feeds.Count + context.Lines.Count);
        CheckConnections(context, once);
        foreach (var feed in context.Feeds)
        {
            CheckFeed(context, once, feed);
        }

        foreach (var line in context.Lines)
        {
            var model = line.Model;
            for (var i = 0; i < model.From.At.Count; i++)
            {
                CheckLine(context, once, model, model.From.At[i], new Place(model, "/lines", line.Index, "/from/at", i));
            }

            if (model.From.Source is { } source)
            {
                CheckLine(context, once, model, source, new Place(model, "/lines", line.Index, "/from/source"));
            }

            for (var i = 0; i < model.To.Count; i++)
            {
                CheckLine(context, once, model, model.To[i], new Place(model, "/lines", line.Index, "/to", i));
            }
        }
    }

    private static void CheckConnections(RuleContext context, OnceOnly once)
    {
        foreach (var link in context.Links)
        {
            if (link.State == ConnectionState.WidthMismatch)
            {
                once.Report(
                    $"Link '{link.Model.Id}' joins {link.Model.From} to {link.Model.To}; a link is one network cable between one jack and one jack.",
                    new Place(link.Model, "/rig/links", link.Index).Pointer,
                    Entity.Of("link", link.Model.Id)
                );
            }
        }

        foreach (var cable in context.Cables)
        {
            if (cable.State == ConnectionState.WidthMismatch)
            {
                ReportEnds(once, "The cable", cable.Model.From, cable.Model.To, new Place(cable.Model, "/rig/cables", cable.Index));
            }
        }

        foreach (var stream in context.Streams)
        {
            foreach (var receiver in stream.Receivers)
            {
                if (receiver.State == ConnectionState.WidthMismatch)
                {
                    CheckReceiver(once, stream, receiver);
                }
            }
        }

        foreach (var route in context.Routes)
        {
            if (route.State == ConnectionState.WidthMismatch)
            {
                ReportEnds(once, "The route", route.Model.From!.Value, route.Model.To, new Place(route.Model, "/patch/routes", route.Index));
            }
        }
    }

    private static void CheckReceiver(OnceOnly once, StreamNode stream, ReceiverNode receiver)
    {
        var channels = receiver.Model.Channels?.Width ?? stream.Model.From.Width;
        var given = receiver.Model.Channels is { } named ? $"takes channels {named}" : "takes all of its channels";
        once.Report(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{receiver.Model.At} has {Points(receiver.Model.At.Width)} but {given} of stream '{stream.Model.Id}', which makes {channels}; "
                    + $"nothing arrives there."
            ),
            new Place(stream.Model, "/patch/streams", stream.Index, "/to", receiver.Index).Pointer,
            Entity.Of("stream", stream.Model.Id),
            Entity.Of("receiver", receiver.Model.At)
        );
    }

    private static void CheckFeed(RuleContext context, OnceOnly once, FeedNode feed)
    {
        var place = new Place(feed.Model, "/feeds", feed.Index, "/source");
        if (feed.SourceState != ConnectionState.Connected)
        {
            return;
        }

        if (feed.Width > 2)
        {
            once.Report(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The source of {place.Name}, {feed.Model.Source}, is {feed.Width} buses wide; a feed is one bus, or two for a pair. Split it "
                        + $"into several feeds."
                ),
                place.Pointer,
                Entity.Of("feed", feed.Model.Id),
                Entity.Of("source", feed.Model.Source)
            );
            return;
        }

        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            if (feed.Model.To[entry].At is { } at && at.Width != feed.Width && context.Find(at, out _) == ConnectionState.Connected)
            {
                once.Report(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Source {feed.Model.Source} of {place.Name} has {Points(feed.Width)}, but {at}, where it shall arrive, has {Points(at.Width)}."
                    ),
                    new Place(feed.Model, "/feeds", feed.Index, "/to", entry).Pointer,
                    Entity.Of("feed", feed.Model.Id),
                    Entity.Of("at", at)
                );
            }
        }
    }

    private static void CheckLine(RuleContext context, OnceOnly once, Line line, PointRange at, in Place place)
    {
        if (at.Width != line.Width && context.Find(at, out _) == ConnectionState.Connected)
        {
            once.Report(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{(line.Width == 1 ? "Mono" : "Stereo")} {place.Name} needs {Points(line.Width)}, but {at} has {Points(at.Width)}."
                ),
                place.Pointer,
                Entity.Of("line", line.Id),
                Entity.Of("at", at)
            );
        }
    }

    private static void ReportEnds(OnceOnly once, string what, PointRange from, PointRange to, in Place place) =>
        once.Report(
            string.Create(CultureInfo.InvariantCulture, $"{what} from {from} to {to} joins {Points(from.Width)} to {Points(to.Width)}; nothing is connected."),
            place.Pointer,
            Entity.Of("from", from),
            Entity.Of("to", to)
        );

    private static string Points(int count) => count == 1 ? "1 point" : string.Create(CultureInfo.InvariantCulture, $"{count} points");
}
