using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports links that are longer than they work for sure.</summary>
/// <remarks>One finding for each link; the entity is the link. A medium without a figure at the link's speed is not judged.</remarks>
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
            Title = "Link too long",
            Family = RuleFamily.Network,
            Severity = Severity.Error,
            Severities = [Severity.Error, Severity.Warning],
            Checks =
                "A copper link is 100 m long at most; one of stranded cores, such as a reel, 85 m; fibre and coaxial cable as far as their "
                + "grade reaches at the link's speed with the usual optics (a warning).",
            Why = "A link that is too long works on the bench and drops packets in the heat; stranded cores lose a fifth to a half more than solid ones.",
            Remedy = "Use fibre, put a switch in the middle, or take a shorter or solid cable.",
            Source =
                "ANSI/TIA-568 (100 m; 20 and 50 % more loss in stranded cores, after public summaries); the stranded figures follow from its "
                + "cord formula with no fixed cable, (102 - 0)/(1 + 0.2) = 85 and (102 - 0)/(1 + 0.5) = 68, outside its intended use; fibre: IEEE "
                + "802.3, clauses 26, 38 and 52 (from memory); AES10 links: handbook excerpt and encyclopaedia",
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

        if (link.Medium is not { } medium)
        {
            if (length > context.Value(MaximumMetres))
            {
                context.CouldNotDecide($"What link '{link.Id}' is made of is not stated: as copper it would be too long.");
            }
        }
        else if (LinkReach.IsCopper(medium))
        {
            CheckCopper(context, subject, medium, length);
        }
        else
        {
            CheckOther(context, subject, medium, length);
        }
    }

    private static void CheckCopper(RuleContext context, LinkNode subject, Medium medium, double length)
    {
        var most = context.Value(MaximumMetres);
        if (LinkReach.Of(medium, subject.Model.SpeedMbps, false) is not { } reach)
        {
            context.CouldNotDecide($"How far {medium} reaches at the speed of link '{subject.Model.Id}' is not known: it is not made for it.");
        }
        else if (reach.Most < Math.Min(most, MaximumMetres.Default) && length > reach.Most)
        {
            Report(context, Severity.Error, subject, length, $"{medium} at {subject.Model.SpeedMbps} Mbit/s works", reach.Most);
        }
        else if (length > most)
        {
            Report(context, Severity.Error, subject, length, "copper links work", most);
        }
        else if (length > context.Value(MaximumStrandedMetres) && medium == Medium.CopperStranded)
        {
            Report(context, Severity.Warning, subject, length, "stranded cores lose more and work", context.Value(MaximumStrandedMetres));
        }
        else if (length > context.Value(MaximumStrandedMetres) && LinkReach.IsCategory(medium))
        {
            context.CouldNotDecide($"Whether the cores of link '{subject.Model.Id}' are solid or stranded is not stated: stranded ones would be too long.");
        }
    }

    private static void CheckOther(RuleContext context, LinkNode subject, Medium medium, double length)
    {
        var isMulticore = context.Rig.Networks[subject.Network].Transport == Transport.PointToPoint;
        if (LinkReach.Of(medium, subject.Model.SpeedMbps, isMulticore) is not { } reach)
        {
            context.LookedAt(0);
            return;
        }

        if (length > reach.Most)
        {
            var at =
                isMulticore ? ""
                : subject.Model.SpeedMbps is { } speed ? $" at {speed} Mbit/s"
                : "";
            Report(context, Severity.Warning, subject, length, $"{medium}{at} works with the usual optics", reach.Most, medium == Medium.Coax);
        }
        else if (length > reach.Least)
        {
            context.CouldNotDecide(
                $"Whether {medium} of the length of link '{subject.Model.Id}' works depends on its speed and grade, which are not all stated."
            );
        }
    }

    private static void Report(RuleContext context, Severity severity, LinkNode subject, double length, string work, double most, bool isPlain = false) =>
        context.ReportAs(
            severity,
            string.Create(
                CultureInfo.InvariantCulture,
                $"Link '{subject.Model.Id}' from {subject.Model.From} to "
                    + $"{subject.Model.To} is {length:0.##} m long, but {(isPlain ? "coaxial cable works" : work)} up to {most:0.##} m."
            ),
            $"/rig/links/{subject.Index}",
            Entity.Of("link", subject.Model.Id)
        );
}
