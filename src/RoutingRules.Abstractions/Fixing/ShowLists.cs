using System.Globalization;
using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>The lists of a show that edits can change.</summary>
public static class ShowLists
{
    /// <summary>Clock domains of the rig.</summary>
    public static ShowList<Clock> Clocks { get; } =
        new("/rig/clocks", static show => show.Rig.Clocks, static (show, list) => show with { Rig = show.Rig with { Clocks = list } });

    /// <summary>Networks of the rig.</summary>
    public static ShowList<Network> Networks { get; } =
        new("/rig/networks", static show => show.Rig.Networks, static (show, list) => show with { Rig = show.Rig with { Networks = list } });

    /// <summary>Network links of the rig.</summary>
    public static ShowList<Link> Links { get; } =
        new("/rig/links", static show => show.Rig.Links, static (show, list) => show with { Rig = show.Rig with { Links = list } });

    /// <summary>Audio cables of the rig.</summary>
    public static ShowList<Cable> Cables { get; } =
        new("/rig/cables", static show => show.Rig.Cables, static (show, list) => show with { Rig = show.Rig with { Cables = list } });

    /// <summary>Points of the rig that do not work.</summary>
    public static ShowList<UnavailablePoints> Unavailable { get; } =
        new("/rig/unavailable", static show => show.Rig.Unavailable, static (show, list) => show with { Rig = show.Rig with { Unavailable = list } });

    /// <summary>Points of the rig that are kept for somebody else.</summary>
    public static ShowList<ReservedPoints> Reserved { get; } =
        new("/rig/reserved", static show => show.Rig.Reserved, static (show, list) => show with { Rig = show.Rig with { Reserved = list } });

    /// <summary>The feeds.</summary>
    public static ShowList<Feed> Feeds { get; } = new("/feeds", static show => show.Feeds, static (show, list) => show with { Feeds = list });

    /// <summary>The lines.</summary>
    public static ShowList<Line> Lines { get; } = new("/lines", static show => show.Lines, static (show, list) => show with { Lines = list });

    /// <summary>Streams of the patch.</summary>
    public static ShowList<AudioStream> Streams { get; } =
        new("/patch/streams", static show => show.Patch.Streams, static (show, list) => show with { Patch = show.Patch with { Streams = list } });

    /// <summary>Routes of the patch.</summary>
    public static ShowList<Route> Routes { get; } =
        new("/patch/routes", static show => show.Patch.Routes, static (show, list) => show with { Patch = show.Patch with { Routes = list } });

    /// <summary>Settings of inputs.</summary>
    public static ShowList<InputSettings> Inputs { get; } =
        new("/patch/inputs", static show => show.Patch.Inputs, static (show, list) => show with { Patch = show.Patch with { Inputs = list } });

    /// <summary>Labels.</summary>
    public static ShowList<PointLabel> Labels { get; } =
        new("/patch/labels", static show => show.Patch.Labels, static (show, list) => show with { Patch = show.Patch with { Labels = list } });

    /// <summary>The receivers of one stream.</summary>
    /// <param name="stream">Its position in the patch, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The position is negative.</exception>
    public static ShowList<StreamReceiver> Receivers(int stream)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(stream);
        return new(
            string.Create(CultureInfo.InvariantCulture, $"/patch/streams/{stream}/to"),
            show => stream < show.Patch.Streams.Count ? show.Patch.Streams[stream].To : null,
            (show, list) =>
            {
                var streams = show.Patch.Streams.AsSpan().ToArray();
                streams[stream] = streams[stream] with { To = list };
                return show with { Patch = show.Patch with { Streams = ValueList.Adopt(streams) } };
            }
        );
    }
}
