using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Diagnosis;

/// <summary>A change of routes, streams and cables.</summary>
internal sealed class PatchChange
{
    public ListChange<Route> Routes { get; } = new();

    public ListChange<AudioStream> Streams { get; } = new();

    public ListChange<Cable> Cables { get; } = new();

    /// <summary>The change as edits of a show.</summary>
    public ValueList<ShowEdit> Edits(Show show)
    {
        var edits = new List<ShowEdit>();
        Streams.AddEdits(edits, ShowLists.Streams, show.Patch.Streams);
        Routes.AddEdits(edits, ShowLists.Routes, show.Patch.Routes);
        Cables.AddEdits(edits, ShowLists.Cables, show.Rig.Cables);
        return edits.ToValueList();
    }

    /// <summary>The change of another state of the show that has the elements it changes; null when that has not all of them.</summary>
    public PatchChange? On(Show before, Show other)
    {
        var change = new PatchChange();
        return ReferenceEquals(before, other) ? this
            : Routes.AddTo(change.Routes, before.Patch.Routes, other.Patch.Routes)
            && Streams.AddTo(change.Streams, before.Patch.Streams, other.Patch.Streams)
            && Cables.AddTo(change.Cables, before.Rig.Cables, other.Rig.Cables)
                ? change
            : null;
    }
}
