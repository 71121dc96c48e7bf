namespace RoutingRules.Fixing.Providers;

/// <summary>The built-in providers of fixes: those with edits by rule id, then those with choices only.</summary>
internal static class BuiltInFixes
{
    public static IReadOnlyList<FixProvider> All { get; } =
    [
        new WriteMeantWord(),
        new TakeOutRepeatedPoint(),
        new TakeOutLaterClaim(),
        new TakeOutDanglingRoute(),
        new TakeOutUnusedRoute(),
        new ClearStray(),
        new TakeOutIdleRoute(),
        new ShiftRun(),
        new BringFeed("RR3001"),
        new BringFeed("RR3003"),
        new SwapPair(),
        new TakeOutUnheardReceiver(),
        new TakeOutUnheardStream(),
        new NameClockBackup(),
        new ClearSecondChannel(),
        new SwitchPhantomOn(),
        new SwitchPhantomOff(),
        new KeepOnePhantomSupply(),
        new NameGainOwner(),
        new KeepFirstSetting(),
        new SwitchRiskyPhantomOff(),
        new LabelFromName(),
        new CutLabel(),
        new CopyLabel(),
        new TakeOutLeftoverLabel(),
        .. StandingChoices.All,
    ];
}
