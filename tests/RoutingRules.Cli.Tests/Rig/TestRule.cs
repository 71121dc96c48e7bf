using RoutingRules.Plugins;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Tests.Rig;

/// <summary>A rule that does what the test says with each device, as a plugin.</summary>
internal sealed class TestRule(string id, Severity severity, Action<RuleContext, DeviceNode> check) : Rule<DeviceNode>
{
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = id,
            Name = id.ToLowerInvariant() + "-name",
            Title = "Test rule",
            Family = RuleFamily.Points,
            Severity = severity,
            Checks = "Whatever the test wants.",
            Why = "Tests need a rule that behaves as they say.",
            Remedy = "Look at the test.",
            Source = "common practice, no source",
        };

    public override void Check(RuleContext context, DeviceNode subject) => check(context, subject);

    /// <summary>A rule that reports every device.</summary>
    public static RoutingPlugin Reports(string id, Severity severity) =>
        new Plugin(
            new TestRule(
                id,
                severity,
                (context, device) => context.Report($"Device {device.Id} was looked at.", $"/rig/devices/{device.Index}", Entity.Of("device", device.Id))
            )
        );

    /// <summary>A rule that reports every device and shows it to the test.</summary>
    public static RoutingPlugin Watches(string id, Action<DeviceNode> watch) =>
        new Plugin(
            new TestRule(
                id,
                Severity.Error,
                (context, device) =>
                {
                    watch(device);
                    context.Report($"Device {device.Id} was looked at.", $"/rig/devices/{device.Index}", Entity.Of("device", device.Id));
                }
            )
        );

    /// <summary>A rule that cannot decide about any device.</summary>
    public static RoutingPlugin CannotDecide(string id) =>
        new Plugin(new TestRule(id, Severity.Error, (context, _) => context.CouldNotDecide("Its colour is not known.")));

    /// <summary>A rule that fails.</summary>
    public static RoutingPlugin Fails(string id) =>
        new Plugin(new TestRule(id, Severity.Error, (_, _) => throw new InvalidOperationException("broken on purpose")));

    /// <summary>A rule that asks to be stopped.</summary>
    public static RoutingPlugin Interrupts(string id, CancellationTokenSource source) =>
        new Plugin(new TestRule(id, Severity.Error, (_, _) => source.Cancel()));

    private sealed class Plugin(TestRule rule) : RoutingPlugin
    {
        public override PluginInfo Info { get; } =
            new()
            {
                Id = "test",
                Version = "1.0.0",
                Title = "Test",
            };

        public override void Register(PluginRegistry registry) => registry.AddRule(rule);
    }
}
