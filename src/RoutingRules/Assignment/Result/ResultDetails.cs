using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>What follows from the places of an assignment beside streams and routes: settings of inputs, labels, and what it did without.</summary>
internal static class ResultDetails
{
    /// <summary>True when anything beyond streams and routes is asked for.</summary>
    public static bool AreWanted(AssignmentOptions options) =>
        options.WriteSettings || options.WriteLabels || (options.MarkWithout && !options.Without.IsEmpty);

    /// <summary>The result with the details asked for.</summary>
    /// <param name="before">The input.</param>
    /// <param name="after">The result.</param>
    /// <param name="options">What is asked for.</param>
    public static Show Write(ResolvedShow before, ResolvedShow after, AssignmentOptions options)
    {
        var show = after.Document;
        var patch = show.Patch;
        if (options.WriteSettings)
        {
            patch = patch with { Inputs = InputFollower.Inputs(before, after), Labels = LabelFollower.Kept(before, after) };
        }

        if (options.WriteLabels)
        {
            patch = patch with { Labels = LabelFollower.Named(after, patch.Labels) };
        }

        var rig = options.MarkWithout ? show.Rig with { Unavailable = [.. show.Rig.Unavailable, .. Unavailable(before, options)] } : show.Rig;
        return show with { Patch = patch, Rig = rig };
    }

    /// <summary>The run at which a demand stands, of a split line the first leg; none where it has no place.</summary>
    public static PointIndex Place(ResolvedShow show, DemandNode demand) =>
        show.Demands[demand.Index].Existing is { IsNone: false } served ? served
        : demand.IsPinned && demand.Allowed.Count > 0 ? demand.Allowed[0]
        : PointIndex.None;

    private static IEnumerable<UnavailablePoints> Unavailable(ResolvedShow show, AssignmentOptions options)
    {
        foreach (var name in (IEnumerable<string>)options.Without)
        {
            if (show.Devices.FirstOrDefault(device => device.Id.Value == name) is { } device)
            {
                foreach (var group in device.Groups.Where(group => group.Kind is Profiles.PortKind.Input or Profiles.PortKind.Output && group.Count > 0))
                {
                    yield return Mark(show, device.First(group), group.Count);
                }
            }
            else if (PointRange.TryParse(name, out var range, out _) && show.Graph.Find(range, out var first) == ConnectionState.Connected)
            {
                yield return Mark(show, first, range.Width);
            }
        }
    }

    private static UnavailablePoints Mark(ResolvedShow show, PointIndex first, int width) =>
        new() { At = show.Graph.Address(first, width), Reason = "left out when the show was assigned" };
}
