using System.Globalization;
using RoutingRules.Assignment;
using RoutingRules.Documents.Text;
using RoutingRules.Model;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Says what stands against an unplaced demand, and what would help.</summary>
internal sealed class ConflictText(DemandNames names, Show show)
{
    private const int Most = 12;

    /// <summary>One sentence about the conflict; null when there is nothing to say beyond the reason.</summary>
    public string? Conflict(UnplacedDemand unplaced)
    {
        var what = unplaced.Sink is { } sink ? $" with all its signal at {sink}" : "";
        return unplaced switch
        {
            { ConflictProof: ConflictProof.NotChecked } or { ConflictProof: ConflictProof.Counted, ConflictPoints.IsEmpty: true } => null,
            { ConflictProof: ConflictProof.Counted } => string.Create(
                CultureInfo.InvariantCulture,
                $"These {unplaced.Conflict.Count + 1} can only use {(Count(unplaced) == 1 ? "one point" : $"these {Count(unplaced)} points")} "
                    + $"({string.Join(", ", unplaced.ConflictPoints)}), which is too few: {All(unplaced)}. Without any one of them the rest fits."
            ),
            { Conflict.IsEmpty: true } => $"It cannot be placed{what} even when everything else is left out.",
            { Conflict.Count: 1 } => $"It cannot be placed{what} together with {Name(unplaced.Conflict[0])}; without that one it can.",
            _ => $"It cannot be placed{what} together with all of {List(unplaced.Conflict)}; without any one of them it can.",
        };
    }

    /// <summary>A change that would help, as the end of "Would fit if …".</summary>
    public string Change(Relaxation relaxation)
    {
        var change = relaxation.Kind switch
        {
            RelaxationKind.FreeReserved => $"{relaxation.Subject} were not reserved",
            RelaxationKind.FewerSpares => relaxation.Subject == "0"
                ? "no output had to stay free as a spare"
                : $"only {relaxation.Subject} had to stay free as spares",
            RelaxationKind.ReleaseHold => $"{Name(relaxation.Subject)} were not held and might move",
            RelaxationKind.DropPin => $"{Name(relaxation.Subject)} were not fixed to its point and might go elsewhere on its device",
            _ => $"zone {Zone(relaxation.Subject)} were allowed too",
        };
        var moves = relaxation.Moves == 0 ? "" : $", with {PlainText.Count(relaxation.Moves, "other", "others")} at another place than now";
        return $"{change}: it could then be at {relaxation.At}{moves}";
    }

    private static int Count(UnplacedDemand unplaced)
    {
        var count = 0;
        foreach (var run in unplaced.ConflictPoints)
        {
            count += run.Width;
        }

        return count;
    }

    private string All(UnplacedDemand unplaced) => List(unplaced.Conflict.Append(unplaced.Demand));

    private string List(IEnumerable<string> demands)
    {
        var all = demands.ToList();
        var rest = all.Count > Most ? string.Create(CultureInfo.InvariantCulture, $" and {all.Count - Most} more") : "";
        return string.Join(", ", all.Take(Most).Select(Name)) + rest;
    }

    private string Name(string demand) => names.Of(demand) is var name && name == demand ? demand : $"{name} [{demand}]";

    private string Zone(string id)
    {
        foreach (var zone in show.Rig.Zones)
        {
            if (zone.Id.Value == id && zone.Name is { } name)
            {
                return $"\"{PlainText.Show(name)}\" ({id})";
            }
        }

        return id;
    }
}
