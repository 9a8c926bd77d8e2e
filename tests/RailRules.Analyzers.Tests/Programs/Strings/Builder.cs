using System.Globalization;
using System.Text;

namespace Programs.Strings.Builder;

/// <summary>A StringBuilder as engineers use one.</summary>
public static class P
{
    public static readonly string Text = Build(4);
    public static readonly string Changed = Change();
    public static readonly int Length = new StringBuilder("abc").Append('d', 3).Length;

    private static string Build(int count)
    {
        var text = new StringBuilder();
        for (var i = 0; i < count; i++)
            text.Append(i).Append(i % 2 == 0 ? ", " : "; ").Append(i * 0.5);
        text.AppendLine("end");
        text.Append("x=").AppendJoin('+', new[] { 1, 2, 3 });
        return text.ToString();
    }

    private static string Change()
    {
        var text = new StringBuilder("fuse");
        text[0] = 'F';
        text.Insert(0, "a ").Replace("se", "SE").Remove(2, 1).Append(CultureInfo.InvariantCulture, $"{1.5:0.00}");
        text.Length -= 1;
        return text.ToString();
    }
}
