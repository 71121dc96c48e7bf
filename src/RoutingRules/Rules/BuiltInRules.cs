namespace RoutingRules.Rules;

/// <summary>The rules that come with the engine, by id. A plain list, so that nothing is found by scanning and trimming stays safe.</summary>
public static class BuiltInRules
{
    /// <summary>The rules, ordered by id.</summary>
    public static IReadOnlyList<Rule> All { get; } =
    [
        new ReferenceUnknown(),
        new IdDuplicate(),
        new PointOutOfRange(),
        new WidthMismatch(),
        new ProfileUnknown(),
        new ProfileUnsound(),
        new ExtensionUnresolved(),
        new PointOfWrongKind(),
        new SinkClaimedTwice(),
        new RouteDangling(),
        new OutputOrphaned(),
        new SignalLoop(),
        new RouteNotAllowed(),
        new BlockRouteBroken(),
        new FactoryRouteDisplaced(),
        new RouteUnused(),
        new OutputStray(),
        new RouteWithoutEffect(),
        new FeedNotDelivered(),
        new FeedDeliveredElsewhere(),
        new FanOutLost(),
        new PairSwapped(),
        new PairSplit(),
        new PairOffParity(),
        new SetNumbersDiffer(),
        new SideMismatch(),
        new SetEntriesUnequal(),
        new StreamOffGrid(),
        new ReceiveBlocksOverlap(),
        new StreamLimitExceeded(),
        new ReceiverWidthMismatch(),
        new StreamWithoutReceiver(),
        new StreamWithoutSignal(),
        new TransmitBlockSentTwice(),
    ];
}
