using System.Text;
using RoutingRules.Documents;

namespace RoutingRules.Tests.Documents;

/// <summary>Whatever bytes come in, reading ends with a result whose findings have their place.</summary>
public sealed class RobustnessTests
{
    private const int Cases = 10_000;

    [Fact]
    public void Random_bytes_never_throw()
    {
        var random = new Random(20270612);
        for (var i = 0; i < Cases; i++)
        {
            var bytes = new byte[random.Next(1, 80)];
            random.NextBytes(bytes);

            Assert.False(ShowReader.Read(bytes).IsUsable);
        }
    }

    [Fact]
    public void Random_tokens_never_throw()
    {
        string[] tokens =
        [
            "{",
            "}",
            "[",
            "]",
            ",",
            ":",
            "\"rig\"",
            "\"feeds\"",
            "\"id\"",
            "\"to\"",
            "\"at\"",
            "\"a/b/1\"",
            "1",
            "-1.5e9",
            "null",
            "true",
            "\"\\ud800\"",
            "\"extensions\"",
            " ",
            "\n",
            "ü",
        ];
        var random = new Random(1);
        for (var i = 0; i < Cases; i++)
        {
            var text = "{" + string.Concat(Enumerable.Range(0, random.Next(1, 30)).Select(_ => tokens[random.Next(tokens.Length)]));

            Assert.False(ShowReader.Read(Encoding.UTF8.GetBytes(text)).IsUsable);
        }
    }

    [Fact]
    public void Random_changes_of_a_good_show_never_throw_and_findings_lie_inside_the_text()
    {
        var good = Encoding.UTF8.GetBytes(Sample.Show);
        var lines = Sample.Show.Count(character => character == '\n') + 1;
        var random = new Random(7);
        var broken = 0;
        for (var i = 0; i < Cases; i++)
        {
            var bytes = Change(good, random);
            var read = ShowReader.Read(bytes);
            broken += read.IsUsable ? 0 : 1;
            foreach (var finding in read.Findings)
            {
                Assert.True(finding.Line is null || (finding.Line >= 1 && finding.Line <= lines + 30), finding.ToString());
                Assert.True(finding.Column is null or >= 1, finding.ToString());
                Assert.True(finding.Pointer is "" || finding.Pointer[0] == '/', finding.Pointer);
            }

            if (read.IsUsable)
            {
                var show = read.Value!;
                Assert.Equal(show, ShowReader.Read(ShowWriter.ToUtf8(show)).Value);
            }
        }

        Assert.InRange(broken, Cases / 3, Cases - (Cases / 100));
    }

    private static byte[] Change(byte[] good, Random random)
    {
        var bytes = good.ToList();
        for (var changes = random.Next(1, 4); changes > 0; changes--)
        {
            var at = random.Next(bytes.Count);
            switch (random.Next(4))
            {
                case 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 1:
                    bytes.RemoveRange(at, Math.Min(random.Next(1, 12), bytes.Count - at));
                    break;
                case 2:
                    bytes.InsertRange(at, good.Skip(random.Next(good.Length - 20)).Take(random.Next(1, 20)).ToArray());
                    break;
                default:
                    bytes[at] = (byte)" ,:{}[]\"019-"[random.Next(12)];
                    break;
            }
        }

        return [.. bytes];
    }
}
