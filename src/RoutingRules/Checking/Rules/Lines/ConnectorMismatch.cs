using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports cables between connectors that no plain cable joins.</summary>
/// <remarks>
/// Silent where a profile names no connector, about looms with multi-pin ends, about connectors the engine does not know, and where the levels are the graver
/// fault.
/// </remarks>
public sealed class ConnectorMismatch : Rule<CableNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6010",
            Name = "connector-mismatch",
            Title = "Cable needs an adapter",
            Family = RuleFamily.Lines,
            Severity = Severity.Warning,
            Severities = [Severity.Warning, Severity.Note],
            Checks =
                "The connectors at both ends of a cable are of one family, pins at the output and a socket at the input; a note where an adapter "
                + "of the trade does.",
            Why = "The adapter nobody packed is found missing when the truck has left.",
            Remedy = "Pack the adapter and write it on the cable's way, or choose another connector.",
            Source =
                "three-pin connectors carry outputs on pins and inputs on sockets: AES14 for the pins' use (from memory), the gender by common "
                + "practice, no source",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, CableNode subject)
    {
        if (!CableLevels.IsInPlace(context, subject))
        {
            context.LookedAt(0);
            return;
        }

        var from = context.GroupOf(subject.From);
        var to = context.GroupOf(subject.To);
        context.LookedAt(from.Model.Connector is null || to.Model.Connector is null ? 0 : 1);
        if (
            from.Model.Connector is not { } left
            || to.Model.Connector is not { } right
            || CableLevels.Judge(from, to) is not null
            || Judge(left, right) is not { } severity
        )
        {
            return;
        }

        context.ReportAs(
            severity,
            $"The cable from {subject.Model.From} ({left}) to {subject.Model.To} ({right}) needs an adapter.",
            $"/rig/cables/{subject.Index}",
            Entity.Of("from", subject.Model.From),
            Entity.Of("to", subject.Model.To)
        );
    }

    private static Severity? Judge(Connector from, Connector to)
    {
        if ((from == Connector.XlrPins && to == Connector.XlrSocket) || !IsKnown(from) || !IsKnown(to))
        {
            return null;
        }

        var isThreePin = IsXlr(from) && IsXlr(to);
        return isThreePin || IsAnalogue(from, to) ? Severity.Note
            : from == to ? null
            : Severity.Warning;
    }

    private static bool IsAnalogue(Connector from, Connector to) => (IsXlr(from) && to == Connector.Jack) || (from == Connector.Jack && IsXlr(to));

    private static bool IsXlr(Connector connector) => connector == Connector.XlrPins || connector == Connector.XlrSocket;

    private static bool IsKnown(Connector connector) =>
        IsXlr(connector)
        || connector == Connector.Jack
        || connector == Connector.Speaker
        || connector == Connector.Rj45
        || connector == Connector.Bnc
        || connector == Connector.Fibre;
}
