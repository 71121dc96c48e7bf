using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports copper links that are longer than they work for sure.</summary>
/// <remarks>One finding for each link; the entity is the link. Fibre and coaxial cable are not judged.</remarks>
public sealed class LinkTooLong : Rule<LinkNode>
{
    private static readonly RuleOption MaximumMetres = new()
    {
        Name = "maximumMetres",
        Doc = "The longest copper link in metres.",
        Default = 100,
        Minimum = 1,
        Maximum = 200,
    };

    private static readonly RuleOption MaximumStrandedMetres = new()
    {
        Name = "maximumStrandedMetres",
        Doc = "The longest link of stranded copper alone in metres: 85 for thicker cores (24 AWG), 68 for thin ones (26 AWG).",
        Default = 85,
        Minimum = 1,
        Maximum = 200,
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5005",
            Name = "link-too-long",
            Title = "Copper link too long",
            Family = RuleFamily.Network,
            Severity = Severity.Error,
            Checks = "A copper link is 100 m long at most; one of stranded cores, such as a reel, 85 m.",
            Why = "A link that is too long works on the bench and drops packets in the heat; stranded cores lose a fifth to a half more than solid ones.",
            Remedy = "Use fibre, put a switch in the middle, or take a shorter or solid cable.",
            Source =
                "ANSI/TIA-568 (100 m; 20 and 50 % more loss in stranded cores, after public summaries); the stranded figures follow from its cord formula with no fixed cable, (102 - 0)/(1 + 0.2) = 85 and (102 - 0)/(1 + 0.5) = 68, outside its intended use",
            Fixability = Fixability.None,
            Options = [MaximumMetres, MaximumStrandedMetres],
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, LinkNode subject)
    {
        var link = subject.Model;
        if (link.LengthMetres is not { } length || subject.State != ConnectionState.Connected)
        {
            context.LookedAt(0);
            return;
        }

        var most = context.Value(MaximumMetres);
        var isStranded = link.Medium == Medium.CopperStranded;
        context.LookedAt(isStranded || link.Medium is null || link.Medium == Medium.CopperSolid ? 1 : 0);
        if (link.Medium is null && length > most)
        {
            context.CouldNotDecide($"What link '{link.Id}' is made of is not stated: as copper it would be too long.");
        }
        else if ((isStranded || link.Medium == Medium.CopperSolid) && length > most)
        {
            Report(context, Severity.Error, subject, length, "copper links work", most);
        }
        else if (isStranded && length > context.Value(MaximumStrandedMetres))
        {
            Report(context, Severity.Warning, subject, length, "stranded cores lose more and work", context.Value(MaximumStrandedMetres));
        }
    }

    private static void Report(RuleContext context, Severity severity, LinkNode subject, double length, string work, double most) =>
        context.ReportAs(
            severity,
            string.Create(
                CultureInfo.InvariantCulture,
                $"Link '{subject.Model.Id}' from {subject.Model.From} to {subject.Model.To} is {length:0.##} m long, but {work} up to {most:0.##} m."
            ),
            $"/rig/links/{subject.Index}",
            Entity.Of("link", subject.Model.Id)
        );
}
