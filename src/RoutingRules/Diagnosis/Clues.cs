using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis;

/// <summary>
/// What else a show says about things it lets stand anywhere: a run that is labelled as the other end, an input at which the phantom power is on that
/// only a microphone elsewhere needs.
/// </summary>
internal sealed class Clues
{
    private readonly ResolvedShow show;
    private readonly Dictionary<int, string> texts = [];
    private readonly HashSet<int> powered = [];

    public Clues(ResolvedShow show)
    {
        this.show = show;
        foreach (var label in show.Document.Patch.Labels)
        {
            for (var i = 0; show.Graph.Find(label.At, out var first) == ConnectionState.Connected && i < label.At.Width; i++)
            {
                texts.TryAdd(first.Value + i, label.Text);
            }
        }

        foreach (var input in show.Document.Patch.Inputs)
        {
            for (var i = 0; input.Phantom == true && show.Graph.Find(input.At, out var first) == ConnectionState.Connected && i < input.At.Width; i++)
            {
                powered.Add(first.Value + i);
            }
        }
    }

    /// <summary>The runs that are labelled as the source of a feed; empty when the show names the place or no label does.</summary>
    public ValueList<PointIndex> PlacesOf(DemandNode demand, PointIndex source)
    {
        if (texts.Count == 0 || demand.IsPinned)
        {
            return default;
        }

        var places = Labelled(demand, source);
        return places.Contains(demand.Existing)
            ? [demand.Existing]
            : places.FindAll(place => show.DemandAt(place) is not { } other || other.Feed != demand.Feed).ToValueList();
    }

    /// <summary>
    /// The inputs that are labelled as a sink of a line, else those with the phantom power that it needs and does not get; empty when the show names the
    /// inputs or nothing says so.
    /// </summary>
    public ValueList<PointIndex> SourcesOf(DemandNode demand, PointIndex sink)
    {
        if (demand.IsPinned)
        {
            return default;
        }

        var labelled = Labelled(demand, sink);
        return (labelled.Count > 0 ? labelled : Powered(demand)).ToValueList();
    }

    private List<PointIndex> Powered(DemandNode demand)
    {
        var found = new List<PointIndex>();
        if (!Needs(demand) || (!demand.Existing.IsNone && IsPowered(demand, demand.Existing)))
        {
            return found;
        }

        foreach (var run in demand.Allowed)
        {
            if (IsPowered(demand, run) && !(show.DemandAt(run) is { } other && Needs(other)))
            {
                found.Add(run);
            }
        }

        return found;
    }

    private static bool Needs(DemandNode demand) => demand.Line?.Model.Phantom == PhantomNeed.Required;

    private bool IsPowered(DemandNode demand, PointIndex run)
    {
        var isPowered = true;
        for (var position = 0; isPowered && position < demand.Width; position++)
        {
            isPowered = powered.Contains(run.Value + position);
        }

        return isPowered;
    }

    private List<PointIndex> Labelled(DemandNode demand, PointIndex like)
    {
        var found = new List<PointIndex>();
        foreach (
            var run in texts.Count == 0 ? []
            : demand.Existing.IsNone ? demand.Allowed
            : [demand.Existing, .. demand.Allowed]
        )
        {
            var isSame = !found.Contains(run);
            for (var position = 0; isSame && position < demand.Width; position++)
            {
                isSame =
                    texts.TryGetValue(run.Value + position, out var text)
                    && texts.TryGetValue(like.Value + position, out var other)
                    && LabelText.AreSame(text, other);
            }

            if (isSame)
            {
                found.Add(run);
            }
        }

        return found;
    }
}
