using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Documents;

/// <summary>Goes through every address of a show and names those that do not resolve.</summary>
internal static class AddressWalk
{
    /// <summary>
    /// The addresses that name something missing or a number out of range, in a fixed order; one list for all rules of a run, not to be changed.
    /// </summary>
    /// <remarks>Where the resolver already vouches for both ends, nothing is looked up again.</remarks>
    public static List<BrokenAddress> Broken(RuleContext context) => context.Shared(static asking => new Found(Visit(asking))).Broken;

    private static List<BrokenAddress> Visit(RuleContext context)
    {
        var broken = new List<BrokenAddress>();
        VisitRig(context, broken);
        VisitIntentions(context, broken);
        VisitPatch(context, broken);
        return broken;
    }

    private static void VisitRig(RuleContext context, List<BrokenAddress> broken)
    {
        foreach (var link in context.Links)
        {
            if (link.State != ConnectionState.Connected)
            {
                Look(context, broken, link.Model.From, new Place(link.Model, "/rig/links", link.Index, "/from"));
                Look(context, broken, link.Model.To, new Place(link.Model, "/rig/links", link.Index, "/to"));
            }
        }

        foreach (var cable in context.Cables)
        {
            if (cable.State != ConnectionState.Connected)
            {
                Look(context, broken, cable.Model.From, new Place(cable.Model, "/rig/cables", cable.Index, "/from"));
                Look(context, broken, cable.Model.To, new Place(cable.Model, "/rig/cables", cable.Index, "/to"));
            }
        }

        var rig = context.Rig;
        for (var i = 0; i < rig.Unavailable.Count; i++)
        {
            Look(context, broken, rig.Unavailable[i].At, new Place(rig.Unavailable[i], "/rig/unavailable", i, "/at"));
        }

        for (var i = 0; i < rig.Reserved.Count; i++)
        {
            Look(context, broken, rig.Reserved[i].At, new Place(rig.Reserved[i], "/rig/reserved", i, "/at"));
        }
    }

    private static void VisitIntentions(RuleContext context, List<BrokenAddress> broken)
    {
        foreach (var feed in context.Feeds)
        {
            if (feed.SourceState != ConnectionState.Connected)
            {
                Look(context, broken, feed.Model.Source, new Place(feed.Model, "/feeds", feed.Index, "/source"));
            }

            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                if (feed.Model.To[entry].At is { } at && context.Demand(feed, entry).Allowed.IsEmpty)
                {
                    Look(context, broken, at, new Place(feed.Model, "/feeds", feed.Index, "/to", entry, "/at"));
                }
            }
        }

        foreach (var line in context.Lines)
        {
            var areFound = line.Model.From.Source is null && context.Demand(line).Allowed.Count == line.Model.From.At.Count;
            for (var i = 0; !areFound && i < line.Model.From.At.Count; i++)
            {
                Look(context, broken, line.Model.From.At[i], new Place(line.Model, "/lines", line.Index, "/from/at", i));
            }

            if (line.Source.IsNone && line.Model.From.Source is { } source)
            {
                Look(context, broken, source, new Place(line.Model, "/lines", line.Index, "/from/source"));
            }

            for (var i = 0; i < line.Model.To.Count; i++)
            {
                if (line.Sinks[i].IsNone)
                {
                    Look(context, broken, line.Model.To[i], new Place(line.Model, "/lines", line.Index, "/to", i));
                }
            }
        }
    }

    private static void VisitPatch(RuleContext context, List<BrokenAddress> broken)
    {
        foreach (var stream in context.Streams)
        {
            if (stream.State != ConnectionState.Connected)
            {
                Look(context, broken, stream.Model.From, new Place(stream.Model, "/patch/streams", stream.Index, "/from"));
            }

            foreach (var receiver in stream.Receivers)
            {
                if (receiver.State != ConnectionState.Connected)
                {
                    Look(context, broken, receiver.Model.At, new Place(stream.Model, "/patch/streams", stream.Index, "/to", receiver.Index, "/at"));
                }
            }
        }

        foreach (var route in context.Routes)
        {
            if (route.State == ConnectionState.Connected)
            {
                continue;
            }

            if (route.Model.From is { } from)
            {
                Look(context, broken, from, new Place(route.Model, "/patch/routes", route.Index, "/from"));
            }

            Look(context, broken, route.Model.To, new Place(route.Model, "/patch/routes", route.Index, "/to"));
        }

        for (var i = 0; i < context.InputSettings.Count; i++)
        {
            var settings = context.InputSettings[i];
            Look(context, broken, settings.At, new Place(settings, "/patch/inputs", i, "/at"));
        }

        for (var i = 0; i < context.Labels.Count; i++)
        {
            var label = context.Labels[i];
            Look(context, broken, label.At, new Place(label, "/patch/labels", i, "/at"));
        }
    }

    private static void Look(RuleContext context, List<BrokenAddress> broken, PointRange at, in Place place)
    {
        var state = context.Find(at, out _);
        if (state != ConnectionState.Connected)
        {
            broken.Add(new BrokenAddress(at, state, place));
        }
    }

    private sealed record Found(List<BrokenAddress> Broken);
}
