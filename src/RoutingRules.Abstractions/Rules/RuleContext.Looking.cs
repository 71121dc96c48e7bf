using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <content>What a rule says about how much there was to judge.</content>
public sealed partial class RuleContext
{
    private int? looked;

    /// <summary>How many things the rule said it looked at since <see cref="NextSubject"/>; null when it said nothing.</summary>
    internal int? Looked => looked;

    /// <summary>
    /// Says how many things the rule truly judged, of which the report tells whether the rule passed or had nothing to look at. Calls add up.
    /// </summary>
    /// <remarks>
    /// The whole show counts for nothing by itself, so a rule over <see cref="ResolvedShow"/> calls it for each thing that it comes to (a line that needs
    /// phantom power, a stream with a receiver); else it never passes. Every other subject counts once, unless the rule calls it: with 0 where the subject is
    /// none of its business.
    /// </remarks>
    /// <param name="things">How many, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="things"/> is negative.</exception>
    public void LookedAt(int things = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(things);
        looked = looked.GetValueOrDefault() + things;
    }
}
