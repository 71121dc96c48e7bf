namespace RoutingRules.Architecture.Tests;

/// <summary>The order of the house: each room may use those before it and none after it.</summary>
internal static class Rooms
{
    /// <summary>The rooms of the core, as namespaces below the assembly's own; the last one is the assembly's own namespace.</summary>
    /// <remarks>A room has the rooms inside it that are not named here. Inside <c>Checking.Rules</c> each family is a room of its own, see the tests.</remarks>
    public static IReadOnlyList<string> Core { get; } =
    [
        "Documents.Text",
        "Documents.Tables",
        "Documents.Formats",
        "Documents",
        "Signal.Profiles",
        "Signal.Graph",
        "Signal.Existing",
        "Signal",
        "Networks",
        "Tracing",
        "Checking.Facts",
        "Checking.Rules",
        "Checking.Catalogue",
        "Checking",
        "Fixing",
        "Fixing.Providers",
        "Diagnosis",
        "Assignment.Problem",
        "Assignment.Wiring",
        "Assignment.Search",
        "Assignment.Search.Feeders",
        "Assignment.Search.InOrder",
        "Assignment.Strategies",
        "Assignment.Result",
        "Assignment",
        "Assignment.Explaining",
        "Engine",
    ];

    public static IReadOnlyList<string> Planning { get; } = ["Comparing", "Losses", "Changeovers", "RunningOrders", "NewShows", "LineChecks", ""];

    public static IReadOnlyList<string> Reports { get; } = ["Schemas", "Names", "Sheets", "FindingReports", "Answers", "Lists", "Riders"];

    /// <summary>For each assembly of <c>src</c> the assemblies of <c>src</c> that it may use.</summary>
    public static IReadOnlyDictionary<string, string[]> Assemblies { get; } =
        new Dictionary<string, string[]>
        {
            ["RoutingRules.Abstractions"] = [],
            ["RoutingRules.Verification"] = ["RoutingRules.Abstractions"],
            ["RoutingRules"] = ["RoutingRules.Abstractions", "RoutingRules.Verification"],
            ["RoutingRules.Planning"] = ["RoutingRules.Abstractions", "RoutingRules.Verification", "RoutingRules"],
            ["RoutingRules.Reports"] = ["RoutingRules.Abstractions", "RoutingRules.Verification", "RoutingRules", "RoutingRules.Planning"],
            ["RoutingRules.Schema"] = ["RoutingRules.Abstractions", "RoutingRules", "RoutingRules.Reports"],
            ["RoutingRules.Testing"] = ["RoutingRules.Abstractions", "RoutingRules"],
        };

    /// <summary>The rooms of an assembly; null when it has none.</summary>
    public static IReadOnlyList<string>? Of(string assembly) =>
        assembly switch
        {
            "RoutingRules" => Core,
            "RoutingRules.Planning" => Planning,
            "RoutingRules.Reports" => Reports,
            _ => null,
        };

    /// <summary>Position of the room that a namespace belongs to: the longest named one around it; -1 when there is none.</summary>
    public static int Find(string assembly, string @namespace)
    {
        var rooms = Of(assembly)!;
        var inside = @namespace == assembly ? "" : @namespace[(assembly.Length + 1)..];

        // The engine itself stands in the namespace that hosts import, at the top of the project.
        if (assembly == "RoutingRules" && inside == "")
            inside = "Engine";

        var best = -1;
        for (var i = 0; i < rooms.Count; i++)
        {
            var isAround = inside == rooms[i] || (rooms[i] != "" && inside.StartsWith(rooms[i] + ".", StringComparison.Ordinal));
            if (isAround && (best < 0 || rooms[i].Length > rooms[best].Length))
                best = i;
        }

        return best;
    }
}
