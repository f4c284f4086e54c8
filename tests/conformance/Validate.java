import java.io.FileInputStream;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** Validates each file against PDF/UA-1 and prints one line a file and one a failed rule. */
public class Validate {
  public static void main(String[] files) throws Exception {
    VeraGreenfieldFoundryProvider.initialise();
    boolean good = true;
    for (String file : files) {
      good &= validate(file);
    }
    System.exit(good ? 0 : 1);
  }

  private static boolean validate(String file) throws Exception {
    PDFAFlavour flavour = PDFAFlavour.PDFUA_1;
    try (InputStream in = new FileInputStream(file);
        PDFAParser parser = Foundries.defaultInstance().createParser(in, flavour);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
      ValidationResult result = validator.validate(parser);
      boolean claims = parser.getFlavours().contains(flavour);
      System.out.println(
          (result.isCompliant() ? "pass" : "FAIL") + (claims ? "" : " (claims nothing)")
              + "\t" + file + "\t" + result.getTotalAssertions() + " checks");
      Map<String, Integer> counts = new TreeMap<>();
      Map<String, String> first = new HashMap<>();
      for (TestAssertion one : result.getTestAssertions()) {
        if (one.getStatus() != TestAssertion.Status.FAILED) continue;
        String rule = one.getRuleId().getClause() + "-" + one.getRuleId().getTestNumber();
        counts.merge(rule, 1, Integer::sum);
        first.putIfAbsent(rule, one.getMessage() + "\n      at " + one.getLocation().getContext());
      }
      counts.forEach(
          (rule, count) ->
              System.out.println("  rule " + rule + ", " + count + " times: " + first.get(rule)));
      return result.isCompliant() && claims;
    }
  }
}
