using System.Globalization;

namespace RoutingRules.Documents.Text;

/// <summary>Looks into the escapes of a JSON string that is known to be well formed otherwise.</summary>
internal static class Escapes
{
    /// <summary>True when a <c>\u</c> escape is half of a surrogate pair without the other half (RFC 8259, section 8.2).</summary>
    public static bool HasLoneSurrogate(ReadOnlySpan<byte> raw)
    {
        var wantsLow = false;
        while (true)
        {
            var escape = raw.IndexOf((byte)'\\');
            if (escape < 0)
            {
                return wantsLow;
            }

            var unit = raw[escape + 1] == (byte)'u' ? int.Parse(raw.Slice(escape + 2, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture) : 0;
            var low = unit is >= 0xDC00 and <= 0xDFFF;
            if (wantsLow ? escape > 0 || !low : low)
            {
                return true;
            }

            wantsLow = unit is >= 0xD800 and <= 0xDBFF;
            raw = raw[(escape + (raw[escape + 1] == (byte)'u' ? 6 : 2))..];
        }
    }
}
