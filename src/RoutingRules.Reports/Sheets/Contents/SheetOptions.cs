using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>What sheets to make.</summary>
public sealed record SheetOptions
{
    /// <summary>
    /// The devices to show, printed in rig order. Devices, zones and sides add up; when all three are empty every device is shown. The lists then hold what
    /// enters, passes or ends at these devices.
    /// </summary>
    public ValueList<Id<Device>> Devices { get; init; }

    /// <summary>Zones whose devices to show.</summary>
    public ValueList<Id<Zone>> Zones { get; init; }

    /// <summary>Sides whose devices to show: those of all zones on that side.</summary>
    public ValueList<ZoneSide> Sides { get; init; }

    /// <summary>The parts to make, printed in the order of their kinds; empty for all.</summary>
    public ValueList<SheetSection> Parts { get; init; }

    /// <summary>Whose left and right to use.</summary>
    public SheetView View { get; init; }

    /// <summary>Rows left blank at the end of lists for what comes late, from 0 to 40.</summary>
    public int BlankRows { get; init; } = 3;

    /// <summary>True for larger type where the writer has type.</summary>
    public bool IsLargeType { get; init; }

    /// <summary>True with the drawing of every signal through each device; pages of chosen devices always have it.</summary>
    public bool HasDrawings { get; init; }

    /// <summary>An older revision of the show; what is not as it was there is marked. Null to mark nothing.</summary>
    public ResolvedShow? Since { get; init; }
}
