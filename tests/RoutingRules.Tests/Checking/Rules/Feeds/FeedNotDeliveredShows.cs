using RoutingRules.Model;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

/// <summary>The rule and its small shows.</summary>
internal static class FeedNotDeliveredShows
{
    public static Show DeskAndBox => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));

    public static Show Streamed => DeskAndBox.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"));
}
