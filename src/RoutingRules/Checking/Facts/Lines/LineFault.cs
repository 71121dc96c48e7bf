using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Lines;

/// <summary>A line of which at least one sink gets nothing.</summary>
internal sealed class LineFault
{
    public required LineNode Line { get; init; }

    /// <summary>The sinks at which nothing of it arrives, in order.</summary>
    public required List<LineSink> Missing { get; init; }

    /// <summary>The sinks at which it arrives in any way, in order.</summary>
    public required List<LineSink> Arriving { get; init; }

    /// <summary>Why, each cause once, in order.</summary>
    public required List<MissingCause> Causes { get; init; }

    public string Pointer => $"/lines/{Line.Index}/to/{Missing[0].Entry}";

    /// <summary>The line and, of several sinks, those that it misses.</summary>
    public IEnumerable<Entity> Entities(RuleContext context) =>
        Line.Model.To.Count == 1
            ? [Entity.Of("line", Line.Model.Id)]
            : [Entity.Of("line", Line.Model.Id), .. Missing.Select(sink => Entity.Of("at", context.Address(sink.At, Line.Width)))];

    /// <summary>Sinks in words.</summary>
    public string Places(RuleContext context, List<LineSink> sinks, string last) =>
        Wording.List(sinks.ConvertAll(sink => context.Address(sink.At, Line.Width).ToString()), last);
}
