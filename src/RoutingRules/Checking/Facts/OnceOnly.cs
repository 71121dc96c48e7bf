using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts;

/// <summary>Remembers what was reported, so that a fault written twice in the same words is one finding.</summary>
internal sealed class OnceOnly(RuleContext context)
{
    private HashSet<string>? reported;

    public void Report(string message, string pointer, params ReadOnlySpan<Entity> entities)
    {
        var key = "";
        foreach (var entity in entities)
        {
            key += $"{entity.Role}={entity.Id}\n";
        }

        if ((reported ??= new HashSet<string>(StringComparer.Ordinal)).Add(key))
        {
            context.Report(message, pointer, entities);
        }
    }
}
