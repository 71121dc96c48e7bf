using RoutingRules.Plugins;

namespace RoutingRules.Strategies.CpSat;

/// <summary>Brings the strategy <c>cp-sat</c>.</summary>
public sealed class CpSatPlugin : RoutingPlugin
{
    /// <inheritdoc/>
    public override PluginInfo Info =>
        new()
        {
            Id = "strategies-cp-sat",
            Version = "0.1.0",
            Title = "Assignment by a constraint solver",
        };

    /// <inheritdoc/>
    public override void Register(PluginRegistry registry)
    {
        ArgumentNullException.ThrowIfNull(registry);
        registry.AddStrategy(new CpSatStrategy());
    }
}
