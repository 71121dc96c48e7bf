using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Documents;

public sealed class RunningOrderReaderTests
{
    private const string Small = """{ "schemaVersion": 1, "title": "Day", "rig": {}, "acts": [ { "id": "one", "start": "18:30" } ] }""";

    private static IEnumerable<string> Rules(string text) =>
        RunningOrderReader.Read(Encoding.UTF8.GetBytes(text)).Findings.Select(finding => $"{finding.Rule} {finding.Pointer}");

    [Fact]
    public void A_small_one_is_read()
    {
        var run = RunningOrderReader.Read(Encoding.UTF8.GetBytes(Small)).Value!;

        Assert.Equal((new TimeOnly(18, 30), 30, (int?)null), (run.Acts[0].Start!.Value, run.Pace.SecondsToPlug, run.Acts[0].ChangeoverMinutes));
    }

    [Theory]
    [InlineData("\"18:30\"", "\"24:00\"", "RR1007 /acts/0/start")]
    [InlineData("\"18:30\"", "\"6:30\"", "RR1007 /acts/0/start")]
    [InlineData("\"18:30\"", "1830", "RR1005 /acts/0/start")]
    [InlineData("\"start\"", "\"begin\"", "RR1002 /acts/0/begin")]
    [InlineData("{ \"id\": \"one\", \"start\": \"18:30\" }", "", "RR1006 /acts")]
    [InlineData("\"rig\"", "\"pace\": { \"secondsToPlug\": -1 }, \"rig\"", "RR1006 /pace/secondsToPlug")]
    [InlineData("\"start\"", "\"changeoverMinutes\": 1441, \"start\"", "RR1006 /acts/0/changeoverMinutes")]
    public void Mistakes_are_named_with_their_place(string right, string wrong, string expected) =>
        Assert.Equal([expected], Rules(Small.Replace(right, wrong, StringComparison.Ordinal)));

    [Property(MaxTest = 200)]
    public Property What_is_written_is_read_as_it_was() =>
        Prop.ForAll(
            Arb.From(
                from show in ModelArbitraries.Shows().Generator
                from other in ModelArbitraries.Shows().Generator
                from minutes in Gen.Choose(0, 1439)
                select (show, other, minutes)
            ),
            made =>
            {
                var run = new RunningOrder
                {
                    Title = made.show.Title,
                    Venue = made.show.Venue,
                    Date = made.show.Date,
                    Revision = made.show.Revision,
                    Rig = made.show.Rig,
                    Feeds = made.show.Feeds,
                    Lines = made.show.Lines,
                    Patch = made.show.Patch,
                    Locked = made.show.Feeds.Select(feed => feed.Id).ToValueList(),
                    Pace = new() { SecondsForClock = made.minutes },
                    Extensions = made.show.Extensions,
                    Acts =
                    [
                        new()
                        {
                            Id = new("a"),
                            Name = made.other.Title,
                            Date = made.other.Date,
                            Start = new TimeOnly(made.minutes / 60, made.minutes % 60),
                            ChangeoverMinutes = made.minutes,
                            Feeds = made.other.Feeds,
                            Lines = made.other.Lines,
                            Patch = made.other.Patch,
                            Extensions = made.other.Extensions,
                        },
                        new()
                        {
                            Id = new("b"),
                            Without = ["x"],
                            Notes = "later",
                        },
                    ],
                };
                return RunningOrderReader.Read(RunningOrderWriter.ToUtf8(run)).Value == run;
            }
        );
}
