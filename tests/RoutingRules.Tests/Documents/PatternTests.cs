using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using RoutingRules.Documents;
using RoutingRules.Documents.Tables;

namespace RoutingRules.Tests.Documents;

/// <summary>What the readers take is what the patterns of the schemas say, tried on texts that nearly fit.</summary>
public sealed class PatternTests
{
    private const int Cases = 5_000;

    public static TheoryData<string, string, string> Members =>
        new()
        {
            { Patterns.Id, """{"schemaVersion":1,"title":"t","rig":{"zones":[{"id":*}]}}""", "box-r.2_A" },
            { Patterns.ProfileId, """{"schemaVersion":1,"title":"t","rig":{"devices":[{"id":"d","profile":*}]}}""", "generic/box/small" },
            { Patterns.PointRange, """{"schemaVersion":1,"title":"t","rig":{"reserved":[{"at":*}]}}""", "desk/aux/3-16" },
            {
                Patterns.GroupRange,
                """{"schemaVersion":1,"title":"t","rig":{"profiles":[{"id":"p","kind":"k","name":"n","portGroups":[]"""
                    + ""","factoryRoutes":[{"from":*,"to":"a/1"}]}]}}""",
                "aux/3-16"
            },
            {
                Patterns.Jack,
                """{"schemaVersion":1,"title":"t","rig":{"profiles":[{"id":"p","kind":"k","name":"n","portGroups":["""
                    + """{"id":"g","kind":"transmit","count":1,"carrier":*}]}]}}""",
                "net/12"
            },
            {
                Patterns.NumberRange,
                """{"schemaVersion":1,"title":"t","rig":{},"patch":{"streams":[{"id":"s","network":"n","from":"a/b/1","to":[{"at":"c/d/1","channels":*}]}]}}""",
                "12-99"
            },
            { Patterns.Date, """{"schemaVersion":1,"title":"t","date":*,"rig":{}}""", "2027-06-12" },
            {
                Patterns.Word.Replace("^", "^(?=.{1,64}$)", StringComparison.Ordinal),
                """{"schemaVersion":1,"title":"t","rig":{},"feeds":[{"id":"f","role":*,"source":"a/b/1","to":[{"at":"a/b/1"}]}]}""",
                "in-ear-2"
            },
        };

    [Theory]
    [MemberData(nameof(Members))]
    public void Reader_and_pattern_agree(string pattern, string document, string sample)
    {
        var regex = new Regex(pattern, RegexOptions.CultureInvariant);
        var random = new Random(sample.Length);
        var taken = 0;
        for (var i = 0; i < Cases; i++)
        {
            var text = Change(sample, random);
            var matches = regex.IsMatch(text) && !text.EndsWith('\n');
            var read = ShowReader.Read(Encoding.UTF8.GetBytes(document.Replace("*", JsonSerializer.Serialize(text), StringComparison.Ordinal)));

            // Well shaped and still wrong: ranges that run backwards and days that are not in the calendar.
            var shapedOnly = read.Findings.Any(finding =>
                finding.Message.Contains("runs backwards", StringComparison.Ordinal)
                || finding.Message.Contains("no day of the calendar", StringComparison.Ordinal)
            );
            Assert.True(read.IsUsable == (matches && !shapedOnly), $"'{text}' {matches} {read.Findings}");
            taken += read.IsUsable ? 1 : 0;
        }

        Assert.InRange(taken, Cases / 50, Cases * 49 / 50);
    }

    [Fact]
    public void Exactly_letters_digits_dot_hyphen_and_underscore_stand_in_an_id()
    {
        for (var value = 0; value < 256; value++)
        {
            var character = (char)value;
            var letter = character is (>= 'a' and <= 'z') or (>= 'A' and <= 'Z') or (>= '0' and <= '9');

            Assert.Equal(letter, Model.AddressParser.IsId([(byte)value]));
            Assert.Equal(letter || character is '.' or '-' or '_', Model.AddressParser.IsId([(byte)'a', (byte)value]));
        }
    }

    private static string Change(string sample, Random random)
    {
        const string Characters = "aZ09.-_/ \nü\u0000é@[`{:";
        var text = new StringBuilder(sample);
        for (var changes = random.Next(0, 3); changes > 0; changes--)
        {
            var at = random.Next(text.Length + 1);
            switch (random.Next(4))
            {
                case 0:
                    text.Insert(at, Characters[random.Next(Characters.Length)]);
                    break;
                case 1 when at < text.Length:
                    text[at] = Characters[random.Next(Characters.Length)];
                    break;
                case 2 when at < text.Length:
                    text.Remove(at, random.Next(1, text.Length - at + 1));
                    break;
                default:
                    text.Insert(at, new string(random.Next(2) == 0 ? 'a' : '1', random.Next(1, 66)));
                    break;
            }
        }

        return text.ToString();
    }
}
