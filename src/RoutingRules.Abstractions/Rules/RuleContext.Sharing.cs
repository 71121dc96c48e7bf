using RoutingRules.Configuration;
using RoutingRules.Model;

namespace RoutingRules.Rules;

/// <content>What the rules of a run have in common.</content>
public sealed partial class RuleContext
{
    private Dictionary<Type, object>? shared;

    internal int PointCount => show.Graph.PointCount;

    /// <summary>Hands the context to the next rule.</summary>
    internal void NextRule(RuleDescriptor next, Severity effective, ValueList<RuleOptionValue> set)
    {
        descriptor = next;
        severity = effective;
        options = set;
        undecided = null;
    }

    /// <summary>A table that several rules need: made for the first that asks, whose work it is, and kept for the others. Nobody may change it.</summary>
    internal T Shared<T>(Func<RuleContext, T> make)
        where T : class
    {
        shared ??= [];
        if (shared.TryGetValue(typeof(T), out var known))
        {
            return (T)known;
        }

        var made = make(this);
        shared[typeof(T)] = made;
        return made;
    }
}
