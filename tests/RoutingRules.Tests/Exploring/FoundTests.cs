namespace RoutingRules.Tests.Exploring;

/// <summary>What exploring has found, so that it stays mended.</summary>
public class FoundTests
{
    [Theory]
    [InlineData("tiny", 44_000_304)] // Two demands that must not share a link, and a receiver nobody mentions: thrift threw it out elsewhere.
    [InlineData("made", 43_002_443)] // A block routed at other numbers stood in the way of a demand, until the first result had cleared it.
    [InlineData("made", 43_002_496)]
    [InlineData("made", 44_000_030)] // The search stopped early; from its own result it placed more.
    [InlineData("made", 51_004_180)]
    [InlineData("made", 51_004_701)] // The same beside pins that contradict.
    [InlineData("made", 51_006_901)]
    [InlineData("made", 51_002_382)] // A line and a feed of one source, and a channel that hangs on the place of the feed.
    public void What_was_found_is_mended(string experiment, int seed) => Assert.Equal([], Experiments.All.Single(known => known.Name == experiment).Try(seed));
}
