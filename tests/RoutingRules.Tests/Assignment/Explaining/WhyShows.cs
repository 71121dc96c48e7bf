using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Assignment.Explaining;

/// <summary>A small rig to ask about.</summary>
internal static class WhyShows
{
    public static readonly RoutingEngine TestEngine = RoutingEngine.CreateBuilder().Build();

    public static Show Rig(params Feed[] feeds) =>
        SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
        {
            Feeds = feeds.ToValueList(),
        };

    public static Feed Monitor(int number, string id) => SmallShow.FeedTo(id, FeedRole.Monitor, $"desk/aux/{number}", "box");

    public static WhyAnswer Why(Show show, string subject, AssignmentOptions? options = null, string? not = null, string? at = null) =>
        TestEngine.Why(
            show,
            new WhyQuestion
            {
                Subject = subject,
                Not = not is null ? null : SmallShow.At(not),
                At = at is null ? null : SmallShow.At(at),
            },
            options
        );

    public static string Text(WhyAnswer answer, Show show)
    {
        using var output = new StringWriter { NewLine = "\n" };
        WhyReport.Write(answer, show, output);
        return output.ToString();
    }
}
