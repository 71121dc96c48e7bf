using RoutingRules.Assignment;
using RoutingRules.Plugins;

namespace RoutingRules.Cli.Tests.Rig;

/// <summary>A strategy that never ends and looks at no stop. Public, so that the tool can load it from the assembly of the tests.</summary>
public sealed class EndlessPlugin : RoutingPlugin
{
    public override PluginInfo Info { get; } =
        new()
        {
            Id = "endless",
            Version = "1.0.0",
            Title = "Endless",
        };

    public override void Register(PluginRegistry registry)
    {
        ArgumentNullException.ThrowIfNull(registry);
        registry.AddStrategy(new Strategy());
    }

    private sealed class Strategy : AssignmentStrategy
    {
        public override string Name => "endless";

        public override string Title => "Never ends";

        public override StrategyAnswer? Search(AssignmentPart part, CancellationToken cancellation)
        {
            while (true)
            {
                Thread.Sleep(100);
            }
        }
    }
}
