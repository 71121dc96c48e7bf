using System.Globalization;
using System.Text;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>Makes values of the model from a seed.</summary>
internal sealed partial class ModelMaker(int seed, int size)
{
    private const int LongestText = 4096;
    private static readonly string[] Names =
    [
        "desk",
        "box-r",
        "box-l",
        "amp",
        "aux",
        "main",
        "matrix",
        "in",
        "out",
        "transmit",
        "receive",
        "net",
        "s1",
        "A.b_C-9",
    ];

    private static readonly Rune[] Characters =
    [
        .. "aZ 0.,:;\"'\\/{}[]<>&+%~#".EnumerateRunes(),
        .. "äßçñø€Ωж中日\u00A0\u00AD\u0301\u200B\u2028\u2029\uFEFF\uFFFD\uFFFE".EnumerateRunes(),
        new(0x1D11E),
        new(0x1F3A4),
        new(0x10FFFF),
    ];

    private readonly Random random = new(seed);
    private readonly int listLength = Math.Clamp(size / 12, 1, 6);

    public string Text() =>
        random.Next(40) switch
        {
            0 => "",
            1 => new string('x', LongestText),
            2 => string.Concat(Enumerable.Repeat("\U0001F3A4", LongestText / 2)),
            _ => FilledText(),
        };

    public string FilledText()
    {
        var text = new StringBuilder();
        for (var length = random.Next(1, 13); length > 0; length--)
        {
            text.Append(Pick(Characters).ToString());
        }

        return text.ToString();
    }

    private bool Flip() => random.Next(2) == 0;

    private T Pick<T>(T[] values) => values[random.Next(values.Length)];

    private T Enum<T>()
        where T : struct, Enum => Pick(System.Enum.GetValues<T>());

    private T? Maybe<T>(Func<T> make)
        where T : class => Flip() ? make() : null;

    private T? MaybeValue<T>(Func<T> make)
        where T : struct => Flip() ? make() : null;

    private ValueList<T> List<T>(Func<T> make, int min = 0)
    {
        var items = new T[random.Next(min, min + listLength + 1)];
        for (var i = 0; i < items.Length; i++)
        {
            items[i] = make();
        }

        return items.ToValueList();
    }

    private string Name()
    {
        if (random.Next(4) > 0)
        {
            return Pick(Names);
        }

        const string First = "abcXYZ019";
        const string Rest = First + ".-_";
        var length = random.Next(8) == 0 ? 64 : random.Next(1, 9);
        return First[random.Next(First.Length)] + string.Concat(Enumerable.Range(1, length - 1).Select(_ => Rest[random.Next(Rest.Length)]));
    }

    private Id<T> Id<T>() => new(Name());

    private string Word()
    {
        var parts = random.Next(1, 4);
        return random.Next(12) == 0
            ? new string('w', 64)
            : string.Join('-', Enumerable.Range(0, parts).Select(_ => Pick(["main", "in", "ear", "x2", "7", "rtp", "l24"])));
    }

    private int Number(int min, int max) =>
        random.Next(8) switch
        {
            0 => min,
            1 => max,
            2 => random.Next(min, max),
            _ => random.Next(min, (int)Math.Min(max, min + 64L)),
        };

    private double Milliseconds() => Pick([0, 0.5, 1.25, double.Epsilon, 1e-7, 0.1, 3.141592653589793, 10_000, random.NextDouble()]);

    private double Metres() => Pick([0.5, 70, 1e-20, 1e-9, 99_999.999, 100_000, random.NextDouble() + 1]);

    private DateOnly Date() =>
        Pick([DateOnly.MinValue, DateOnly.MaxValue, new DateOnly(2028, 2, 29), DateOnly.FromDayNumber(random.Next(DateOnly.MaxValue.DayNumber))]);

    private NumberRange Numbers()
    {
        var first = Number(1, 99_999);
        return new NumberRange(first, Flip() ? first : Number(first, 99_999));
    }

    private PointRange Points()
    {
        var numbers = Numbers();
        return new PointRange(Id<Device>(), Id<PortGroup>(), numbers.First, numbers.Last);
    }

    private GroupRange GroupPoints(bool single = false)
    {
        var numbers = Numbers();
        return new GroupRange(Id<PortGroup>(), numbers.First, single ? numbers.First : numbers.Last);
    }

    private ExtensionData? Extensions() => random.Next(5) == 0 ? new ExtensionData { Json = JsonObject(random.Next(1, 5)) } : null;

    private string Json(int depth) =>
        random.Next(depth > 0 ? 9 : 6) switch
        {
            0 => "null",
            1 => Flip() ? "true" : "false",
            2 => random.Next().ToString(CultureInfo.InvariantCulture),
            3 => Pick(["-0", "1.50", "6.02e+23", "1e-7"]),
            4 => Pick(["\"\"", "\"\\u0041\\n\\\"\"", "\"\\ud83c\\udfa4\"", "\"ключ 🎤\"", "\"{}[]\""]),
            5 => "{}",
            6 => $"[{Space()}{string.Join(",", Enumerable.Range(0, random.Next(3)).Select(_ => Json(depth - 1) + Space()))}]",
            _ => JsonObject(depth),
        };

    private string JsonObject(int depth)
    {
        var first = Space();
        var between = "," + Space();
        var members = Enumerable.Range(0, random.Next(4)).Select(Member);
        return $"{{{first}{string.Join(between, members)}}}";

        string Member(int i) => $"\"{Pick(["x-", "a/b~", "ö", ""])}{i}\"{Space()}:{Space()}{Json(depth - 1)}";
    }

    private string Space() => Pick(["", "", " ", "\n", "\r\n  ", "\t"]);
}
