namespace RoutingRules.Fixing;

/// <summary>The built-in providers of fixes, by rule id.</summary>
internal static class BuiltInFixes
{
    public static IReadOnlyList<FixProvider> All { get; } =
    [
        new TakeOutLaterClaim(),
        new TakeOutUnusedRoute(),
        new TakeOutIdleRoute(),
        new TakeOutUnheardStream(),
        new SwitchPhantomOff(),
        new SwitchRiskyPhantomOff(),
        new LabelFromName(),
        new TakeOutLeftoverLabel(),
    ];
}
